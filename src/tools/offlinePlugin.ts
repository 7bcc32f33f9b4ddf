import { createHash } from "node:crypto";
import webpack, { type Compiler } from "webpack";
import { PANE_DATA } from "../pane/data";
import { readPaneData } from "./paneData";

/** What the page uses that other parts of the build write; the service worker keeps it too. */
const FROM_OTHERS = [PANE_DATA, "help.html", "help.css", "icons/icon-32.png"];

/** Built for those who look for it, not for the page. */
const NOT_KEPT = /^licences\/|^service-worker\.js$/;

/**
 * Tells the service worker which files it keeps, and gives this version a name that changes with any
 * of them, so that a browser notices a new one.
 */
export class FillServiceWorker {
  apply(compiler: Compiler): void {
    const { Compilation, sources } = webpack;
    compiler.hooks.thisCompilation.tap("FillServiceWorker", (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_REPORT;
      compilation.hooks.processAssets.tap({ name: "FillServiceWorker", stage }, (assets) => {
        const kept = Object.entries(assets)
          .filter(([name]) => !NOT_KEPT.test(name))
          .sort(([one], [other]) => (one < other ? -1 : 1));
        const hash = createHash("sha256").update(JSON.stringify(readPaneData()));
        for (const [name, source] of kept) hash.update(name).update(source.buffer());
        const version = hash.digest("hex").slice(0, 16);
        // The page itself goes by its folder's address.
        const files = [...kept.map(([name]) => name), ...FROM_OTHERS].map((name) =>
          name === "index.html" ? "./" : name,
        );
        compilation.updateAsset("service-worker.js", (worker) => {
          const facts = `const VERSION=${JSON.stringify(version)},FILES=${JSON.stringify(files)};`;
          return new sources.ConcatSource(facts, worker);
        });
      });
    });
  }
}
