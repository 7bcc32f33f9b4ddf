import { join } from "node:path";
import { EsbuildPlugin } from "esbuild-loader";
import webpack, { type Compilation, type Configuration } from "webpack";
import { VERSION } from "../core/version";
import { compiled } from "./compile";
import { BUNDLED, emitting, type Emit } from "./emitting";
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
    plugins: [emitting("sql", emitSql, BUNDLED)],
  };
}

const minimizer = new EsbuildPlugin({
  target: TARGET,
  format: undefined,
  lineLimit: 120,
  legalComments: "none",
});

/** Writes the SQL around the bundle, and the notices of others into the bundle's head. */
function emitSql(emit: Emit, compilation: Compilation): void {
  const file = "reps-to-spare.js";
  const bundle = compilation.getAsset(file)?.source.source();
  if (bundle === undefined) throw new Error(`there is no ${file} to make SQL of`);
  const parts = { bundle: String(bundle), notices: noticesOf(compilation), version: VERSION };
  const noted = `/*\n${parts.notices.join("\n")}\n*/\n${parts.bundle}`;
  compilation.updateAsset(file, new webpack.sources.RawSource(noted));
  emit("snowflake.sql", snowflakeText(parts));
  emit("bigquery.sql", bigQueryText(parts));
}
