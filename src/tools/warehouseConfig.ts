import { readFileSync } from "node:fs";
import { join } from "node:path";
import { EsbuildPlugin } from "esbuild-loader";
import webpack, { type Compiler, type Configuration } from "webpack";
import { compiled } from "./compile";
import { noticesOf } from "./notices";
import { DIST, ROOT } from "./paths";
import { BUNDLE, snowflakeText, bigQueryText } from "./warehouseScript";

/** Warehouses do not say which JavaScript they have; this level has been everywhere for years. */
const TARGET = "es2019";

/** The functions for data warehouses that run JavaScript: the bundle, and a file of SQL that registers it. */
export function warehouseConfig(): Configuration {
  return {
    ...compiled("warehouse", "web", TARGET),
    entry: { "reps-to-spare": join(ROOT, "src", "hosts", "warehouse", "answer.ts") },
    output: {
      path: join(DIST, "warehouse"),
      filename: "[name].js",
      library: { name: BUNDLE, type: "var" },
    },
    optimization: { minimizer: [minimizer] },
    plugins: [new EmitSql()],
  };
}

const minimizer = new EsbuildPlugin({
  target: TARGET,
  format: undefined,
  lineLimit: 120,
  legalComments: "none",
});

/** Writes the SQL around the bundle, and the notices of others into the bundle's head. */
class EmitSql {
  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("EmitSql", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_SUMMARIZE;
      compilation.hooks.processAssets.tap({ name: "EmitSql", stage }, (assets) => {
        const file = "reps-to-spare.js";
        const bundle = assets[file];
        if (!bundle) throw new Error(`there is no ${file} to make SQL of`);
        const { version } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8")) as {
          version: string;
        };
        const parts = { bundle: String(bundle.source()), notices: noticesOf(compilation), version };
        const source = (text: string) => new webpack.sources.RawSource(text);
        compilation.updateAsset(
          file,
          source(`/*\n${parts.notices.join("\n")}\n*/\n${parts.bundle}`),
        );
        compilation.emitAsset("snowflake.sql", source(snowflakeText(parts)));
        compilation.emitAsset("bigquery.sql", source(bigQueryText(parts)));
      });
    });
  }
}
