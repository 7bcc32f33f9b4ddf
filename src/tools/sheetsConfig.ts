import { join } from "node:path";
import type { Compilation, Configuration } from "webpack";
import { VERSION } from "../core/version";
import { readCatalogue, spelledOut } from "./catalogue";
import { cautions } from "./help";
import { noticesOf } from "./notices";
import { compiled } from "./compile";
import { BUNDLED, emitting, type Emit } from "./emitting";
import { ROOT, SCRIPT, SHEETS } from "./paths";
import { BUNDLE, scriptText } from "./sheetsScript";

/** What is known to run everywhere in Apps Script: it has V8, but lags behind in syntax (no class fields). */
const TARGET = "es2019";

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
    module: { rules: [ours, ofOthers] },
    optimization: { minimize: false },
    plugins: [emitting("script", emitScript, BUNDLED)],
  };
}

/** What computes can be read in the script's editor: our own code keeps its names and its comments, */
const ours = { test: /\.ts$/, loader: join(ROOT, "src", "tools", "commentedLoader.mjs") };

/** and the libraries' their names. Their notices stand at the end of the script. */
const ofOthers = {
  test: /\.js$/,
  include: join(ROOT, "node_modules"),
  loader: "esbuild-loader",
  options: { target: TARGET, legalComments: "none" },
};

/** Comments as a reader wants them: shared sentences in their places, and no tag that Sheets might take for its own. */
const readable = (bundle: string) =>
  spelledOut(bundle).replaceAll("@customfunction", "The cell function");

/** Puts the generated script in place of the bundle. */
function emitScript(emit: Emit, compilation: Compilation): void {
  const functions = compilation.getAsset("functions.js")?.source.source();
  if (functions === undefined) throw new Error("there is no functions.js to make the script of");
  const bundle = readable(String(functions));
  const notices = noticesOf(compilation);
  compilation.deleteAsset("functions.js");
  const parts = { catalogue: readCatalogue(), cautions, bundle, notices, version: VERSION };
  emit(SCRIPT, scriptText(parts));
  emit("appsscript.json", `${JSON.stringify(MANIFEST, null, 2)}\n`);
}
