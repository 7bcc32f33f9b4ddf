import { createHash } from "node:crypto";
import { join } from "node:path";
import type { Compilation, Configuration } from "webpack";
import { cardPage } from "../cards/document";
import { compiledPage } from "./compile";
import { BUNDLED, emitting, type Emit } from "./emitting";
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
    plugins: [...page.plugins, emitting("card page", emitPage, BUNDLED)],
  };
}

/** Puts script and styles into the page, each named by its hash in the page's own policy. */
function emitPage(emit: Emit, compilation: Compilation): void {
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
  emit("index.html", page);
}

/** An asset's text, which is then no file of its own. */
function take(compilation: Compilation, name: string): string {
  const asset = compilation.getAsset(name);
  if (!asset) throw new Error(`${name} was not built`);
  compilation.deleteAsset(name);
  return String(asset.source.source()).trim();
}

const hashOf = (text: string) => `sha256-${createHash("sha256").update(text).digest("base64")}`;
