import { join } from "node:path";
import webpack, { type Configuration } from "webpack";
import { compileTypeScript, minimize } from "./compile";
import { DIST, ROOT } from "./paths";

/** Node 20, the oldest that the project runs on. */
const target = "es2022";

/** The command line: one file that Node runs without anything beside it. */
export function cliConfig(): Configuration {
  return {
    name: "cli",
    mode: "production",
    target: ["node20", target],
    devtool: false,
    entry: { cli: join(ROOT, "src", "cli", "main.ts") },
    experiments: { outputModule: true },
    output: { path: DIST, filename: "[name].js", module: true, chunkFormat: "module" },
    resolve: { extensions: [".ts", ".js"] },
    module: {
      rules: [compileTypeScript(target)],
      parser: { javascript: { dynamicImportMode: "eager" } },
    },
    optimization: minimize(target),
    performance: { hints: false },
    plugins: [
      new webpack.BannerPlugin({ banner: "#!/usr/bin/env node", raw: true, entryOnly: true }),
    ],
  };
}
