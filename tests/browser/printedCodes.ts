import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import jsQR from "jsqr";
import type { Browser } from "playwright-core";
import { PNG } from "pngjs";

/** Printing is read back through poppler's pictures of the pages. In CI it must be there. */
export const hasPoppler = spawnSync("pdftoppm", ["-v"]).status === 0;
if (!hasPoppler) {
  const trouble = "pdftoppm (poppler-utils) was not found, so no printed code is read";
  if (process.env.CI) throw new Error(trouble);
  process.stderr.write(`SKIPPED: ${trouble}\n`);
}

/** Prints a page of cards to a PDF, four cards a page, and reads its codes with a reader that is not ours. */
export async function codesOnPaper(browser: Browser, html: string): Promise<readonly string[][]> {
  const folder = mkdtempSync(join(tmpdir(), "paper-"));
  const context = await browser.newContext();
  try {
    const paper = await context.newPage();
    await paper.setContent(html);
    writeFileSync(join(folder, "cards.pdf"), await paper.pdf({ preferCSSPageSize: true }));
    const pdf = join(folder, "cards.pdf");
    execFileSync("pdftoppm", ["-r", "150", "-gray", "-png", pdf, join(folder, "sheet")]);
    const sheets = readdirSync(folder).filter((name) => /^sheet.*png$/.test(name));
    return sheets.map((name) => {
      const page = PNG.sync.read(readFileSync(join(folder, name)));
      return quartersOf(page).flatMap((quarter) => codeIn(quarter) ?? []);
    });
  } finally {
    await context.close();
    rmSync(folder, { recursive: true });
  }
}

/** A page's four quarters, row by row: the reader finds one code in a picture. */
function quartersOf(page: PNG): PNG[] {
  const width = page.width >> 1;
  const height = page.height >> 1;
  return [0, 1, 2, 3].map((at) => {
    const quarter = new PNG({ width, height });
    PNG.bitblt(page, quarter, (at % 2) * width, (at >> 1) * height, width, height, 0, 0);
    return quarter;
  });
}

const codeIn = ({ data, width, height }: PNG): string | undefined =>
  jsQR(new Uint8ClampedArray(data), width, height, { inversionAttempts: "dontInvert" })?.data;
