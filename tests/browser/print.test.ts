import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { describeInBrowser, home, joinBrowser } from "./browser";
import type { PageSession } from "./pageSession";
import { openPage } from "./pageSession";
import { hasPoppler } from "./printedCodes";

/** A page holds so many rows at least, at a size that can be read. */
const rowsAPage = 25;

describeInBrowser("the demo on paper", () => {
  let session: PageSession;
  let folder: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "print-"));
    session = await openPage(await joinBrowser(), home);
  });

  afterAll(() => {
    rmSync(folder, { recursive: true });
  });

  /** The texts in the printed table, and those of them that their cell cuts off. */
  const printedTexts = () =>
    session.page.evaluate(() => {
      window.dispatchEvent(new Event("beforeprint"));
      const spans = [...document.querySelectorAll<HTMLElement>("#print td span")];
      const texts = spans.map(({ textContent }) => textContent);
      const cut = spans.filter(
        ({ textContent, scrollWidth, clientWidth }) =>
          textContent !== "" && scrollWidth > clientWidth + 1,
      );
      return {
        texts: texts.filter((text) => text !== ""),
        cut: cut.map(({ textContent }) => textContent),
        rows: document.querySelectorAll("#print tr").length,
      };
    });

  it.skipIf(!hasPoppler)("has every text of every sheet, whole", async () => {
    const { page } = session;
    const sheets = await page.evaluate(() =>
      window
        .spare!.api.getActiveWorkbook()!
        .getSheets()
        .map((sheet) => sheet.getSheetName()),
    );
    expect(sheets.length).toBeGreaterThanOrEqual(12);
    await session.shows("Start", "C11").toBe(112.5);
    // The last to be computed.
    await session.shows("Strength trend", "G8").toEqual(expect.any(Number));
    for (const sheet of sheets) {
      await session.show(sheet);
      await session.drawn();
      await page.emulateMedia({ media: "print" });
      const { texts, cut, rows } = await printedTexts();
      expect(texts.length, sheet).toBeGreaterThan(10);
      expect(cut, sheet).toEqual([]);

      // As the browser's own menu prints, which asks the page for nothing.
      const file = join(folder, "sheet.pdf");
      writeFileSync(file, await page.pdf({ preferCSSPageSize: true, printBackground: true }));
      // Not before: whenever the screen comes back, it is drawn anew.
      await page.emulateMedia({ media: null });
      const text = execFileSync("pdftotext", ["-raw", file, "-"], { encoding: "utf8" });
      const pages = text.split("\f").length - 1;
      expect(pages, sheet).toBeGreaterThan(0);
      expect(pages, sheet).toBeLessThanOrEqual(2 + Math.ceil(rows / rowsAPage));
      const onPaper = withoutSpaces(text);
      expect(
        texts.filter((each) => !onPaper.includes(withoutSpaces(each))),
        sheet,
      ).toEqual([]);
    }
    expect(session.complaints).toEqual([]);
  });
});

const withoutSpaces = (text: string) => text.replace(/\s/g, "");
