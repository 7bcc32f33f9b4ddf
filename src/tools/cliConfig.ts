import { join } from "node:path";
import webpack, { type Configuration } from "webpack";
import { compiled } from "./compile";
import { ROOT } from "./paths";

/** Node 20, the oldest that the project runs on. */
const TARGET = "es2022";

/** The command line: one file that Node runs without anything beside it. */
export function cliConfig(): Configuration {
  const common = compiled("cli", "node20", TARGET);
  return {
    ...common,
    entry: { cli: join(ROOT, "src", "cli", "main.ts") },
    // Larger than all of ours, so it is loaded if it is there, and only where it is asked for.
    externals: { "@duckdb/node-api": "import @duckdb/node-api" },
    experiments: { outputModule: true },
    output: { ...common.output, module: true, chunkFormat: "module" },
    module: { ...common.module, parser: { javascript: { dynamicImportMode: "eager" } } },
    plugins: [
      new webpack.BannerPlugin({ banner: "#!/usr/bin/env node", raw: true, entryOnly: true }),
    ],
  };
}
