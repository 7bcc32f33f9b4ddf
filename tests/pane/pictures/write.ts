/**
 * Writes the pictures of the demo that the documents show: `npx tsx tests/pane/pictures/write.ts`.
 * Another folder can be named.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { ROOT } from "../../../src/tools/paths";
import { launchOptions } from "../../browser/chromium";
import { drawOn, openPage } from "./page";
import { demoSelections } from "./selections";

const folder = process.argv[2] ?? join(ROOT, "docs", "images", "pictures");
mkdirSync(folder, { recursive: true });
const complaints: string[] = [];
const browser = await chromium.launch(launchOptions);
const page = await openPage(browser, complaints);
for (const { id, values, units } of demoSelections) {
  await drawOn(page, id, values, { width: 720, units });
  const png = await page.evaluate(async () => {
    const blob = await window.pictures.svgToPng(document.querySelector("svg")!, 1.5);
    const bytes = new Uint8Array(await blob.arrayBuffer());
    return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
  });
  writeFileSync(join(folder, `${id}.png`), Buffer.from(png, "base64"));
}
await browser.close();
if (complaints.length > 0) throw new Error(complaints.join("\n"));
