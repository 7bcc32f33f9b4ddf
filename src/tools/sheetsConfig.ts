import { readFileSync } from "node:fs";
import { join } from "node:path";
import { EsbuildPlugin } from "esbuild-loader";
import webpack, { type Compiler, type Configuration } from "webpack";
import { readCatalogue } from "./catalogue";
import { cautions } from "./help";
import { noticesOf } from "./notices";
import { compiled } from "./compile";
import { DIST, ROOT } from "./paths";
import { BUNDLE, scriptText } from "./sheetsScript";

/** What is known to run everywhere in Apps Script: it has V8, but lags behind in syntax (no class fields). */
const TARGET = "es2019";

/** The folder to push, and the file in it to paste. */
export const SHEETS = join(DIST, "sheets");
export const SCRIPT = "reps-to-spare.gs";

/** V8, and nothing asked for: no permission in advance, no record of what went wrong in whose cells. */
const MANIFEST = { exceptionLogging: "NONE", runtimeVersion: "V8" };

/** The script for Google Sheets and its manifest, written around the bundled functions. */
export function sheetsConfig(): Configuration {
  return {
    ...compiled("sheets", "web", TARGET),
    entry: { functions: join(ROOT, "src", "hosts", "sheets", "script.ts") },
    output: {
      path: SHEETS,
      filename: "[name].js",
      library: { name: BUNDLE, type: "var" },
    },
    optimization: { minimizer: [minimizer] },
    plugins: [new EmitScript()],
  };
}

/**
 * The script's editor has trouble with very long lines. The bundle goes into a function of ours, so nothing more
 * needs to be wrapped around it (which a format left to the plugin would do).
 */
const minimizer = new EsbuildPlugin({
  target: TARGET,
  format: undefined,
  lineLimit: 120,
  legalComments: "none",
});

/** Puts the generated script in place of the bundle. */
class EmitScript {
  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("EmitScript", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_SUMMARIZE;
      compilation.hooks.processAssets.tap({ name: "EmitScript", stage }, (assets) => {
        const emit = (file: string, text: string) =>
          compilation.emitAsset(file, new webpack.sources.RawSource(text));
        const functions = assets["functions.js"];
        if (!functions) throw new Error("there is no functions.js to make the script of");
        const bundle = String(functions.source());
        const { version } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8")) as {
          version: string;
        };
        const notices = noticesOf(compilation);
        compilation.deleteAsset("functions.js");
        emit(
          SCRIPT,
          scriptText({ catalogue: readCatalogue(), cautions, bundle, notices, version }),
        );
        emit("appsscript.json", `${JSON.stringify(MANIFEST, null, 2)}\n`);
      });
    });
  }
}
