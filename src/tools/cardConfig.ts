import { createHash } from "node:crypto";
import { join } from "node:path";
import webpack, { type Compilation, type Compiler, type Configuration } from "webpack";
import { cardPage } from "../cards/document";
import { compiledPage } from "./compile";
import { noticesOf } from "./notices";
import { DIST, ROOT } from "./paths";

const PAGE = join(ROOT, "src", "hosts", "card");

/** Phones of the last six years. */
const TARGET = "es2020";

/** The athlete's card: one page with its script and styles inside, and the worker that keeps it at hand. */
export function cardConfig(): Configuration {
  const page = compiledPage("card", TARGET);
  return {
    ...page,
    entry: { card: join(PAGE, "main.ts"), worker: join(PAGE, "worker.ts") },
    output: { ...page.output, path: join(DIST, "card") },
    plugins: [...page.plugins, new EmitCardPage()],
  };
}

/** Puts script and styles into the page, each named by its hash in the page's own policy. */
class EmitCardPage {
  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("EmitCardPage", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_SUMMARIZE;
      compilation.hooks.processAssets.tap({ name: "EmitCardPage", stage }, () => {
        const script = take(compilation, "card.js");
        const style = take(compilation, "card.css");
        if (/<\/(script|style)|<!--/i.test(script + style)) {
          throw new Error("the card's script or style would end its own element");
        }
        const page = cardPage({
          script,
          style,
          scriptHash: hashOf(script),
          styleHash: hashOf(style),
          notices: noticesOf(compilation).join("\n"),
        });
        compilation.emitAsset("index.html", new webpack.sources.RawSource(page));
      });
    });
  }
}

/** An asset's text, which is then no file of its own. */
function take(compilation: Compilation, name: string): string {
  const asset = compilation.getAsset(name);
  if (!asset) throw new Error(`${name} was not built`);
  compilation.deleteAsset(name);
  return String(asset.source.source()).trim();
}

const hashOf = (text: string) => `sha256-${createHash("sha256").update(text).digest("base64")}`;
