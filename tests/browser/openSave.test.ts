import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExcelJS from "exceljs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it, onTestFinished } from "vitest";
import { ROOT } from "../../src/tools/paths";
import { picturesOf, type Pictures } from "../../src/engine/data/pictures";
import { lookInto, readData } from "../engine/data/support";
import { accent, describeInBrowser, home, joinBrowser, pixelsOf } from "./browser";
import { usualSize } from "./keptTab";
import { openForAll } from "./openForAll";
import type { PageSession } from "./pageSession";
import { openPage } from "./pageSession";

const fileOf = (name: string) => join(import.meta.dirname, "../xlsx/files", `${name}.xlsx`);
const log = "Week 1's log";

describeInBrowser("a workbook of one's own in the page", () => {
  let session: PageSession;
  let page: Page;
  let folder: string;

  beforeAll(() => void (folder = mkdtempSync(join(tmpdir(), "open-save-"))));
  afterAll(() => rmSync(folder, { recursive: true }));

  openForAll(async () => {
    session = await openPage(await joinBrowser(), home, { demo: ["Start", "Percentages"] });
    ({ page } = session);
  });

  /** Opens one of our files under another name, which no other test has. */
  async function openAs(name: string, file: string): Promise<void> {
    await session.openFile({ name, bytes: new Uint8Array(readFileSync(fileOf(file))) });
    await session.says().toMatch(new RegExp(`^${name} is open`));
  }

  async function openDemo(): Promise<void> {
    await session.choose("Demo");
    await session.name().toBe("Demo");
  }

  async function type(address: string, text: string): Promise<void> {
    await session.go(address);
    await session.type(text);
  }

  async function saveAs(expected: string): Promise<Uint8Array> {
    const { name, bytes } = await session.save("Save");
    expect(name).toBe(expected);
    return bytes;
  }

  it("opens, computes, takes a change and is saved with it, and nothing leaves the page", async () => {
    await session.openFile(fileOf("xlsxwriter"));
    await session
      .says()
      .toBe(
        "xlsxwriter.xlsx is open. A copy saved here will not have its tables' own look and names.",
      );
    expect(await page.title()).toBe("xlsxwriter – Reps to Spare");
    // 100 kg for 5 with 2 left is 7 to failure: Epley (1985) has 100 × (1 + 7/30).
    expect(await session.read(log, "F3")).toBeCloseTo(123.3333, 4);
    expect(await session.read(log, "F5")).toBe(122.5);
    expect(await session.read("Two", "A1")).toBe(200);

    await type("B2", "120");
    await session.shows(log, "F3").toBe(148);

    const { cell, style, sheetNamed } = lookInto(readData(await saveAs("xlsxwriter.xlsx")));
    expect(cell(log, "B2").v).toBe(120);
    expect(cell(log, "F3")).toMatchObject({
      f: "=SPARE.E1RM($B$2:$B$4,$C$2:$C$4,$D$2:$D$4)",
      v: 148,
    });
    expect(style(log, "F1").bg).toEqual({ rgb: "#1f6b63" });
    expect(sheetNamed(log).columnData?.[0]?.w).toBe(103);
    expect(sheetNamed("Two").hidden).toBe(1);

    const origins = session.requests.filter((address) => !address.startsWith("blob:"));
    expect(new Set(origins.map((address) => new URL(address).origin))).toEqual(
      new Set([new URL(home).origin]),
    );
    expect(session.complaints).toEqual([]);
  });

  it("is saved with what its formulas come to, however soon after a change", async () => {
    await openAs("changed.xlsx", "xlsxwriter");
    await page.evaluate(() => {
      const change = () =>
        window.spare!.api.getActiveWorkbook()!.getActiveSheet().getRange("B2").setValue(120);
      const buttons = document.querySelector(".file-actions")!;
      buttons.addEventListener("click", change, { capture: true, once: true });
    });
    const { cell } = lookInto(readData(await saveAs("changed.xlsx")));
    expect([cell(log, "B2").v, cell(log, "F3").v]).toEqual([120, 148]);
  });

  it("is opened by dropping it on the page", async () => {
    const bytes = readFileSync(fileOf("exceljs")).toString("base64");
    const transfer = await page.evaluateHandle((encoded) => {
      const data = Uint8Array.from(atob(encoded), (character) => character.charCodeAt(0));
      const holder = new DataTransfer();
      holder.items.add(new File([data], "crew.xlsx"));
      return holder;
    }, bytes);
    await page.dispatchEvent("#workbook", "drop", { dataTransfer: transfer });
    await session.says().toMatch(/^crew.xlsx is open/);
    expect(await session.read("Crew & tests", "D5")).toBe(128);
  });

  it("says why a file cannot be read, and keeps the open one", async () => {
    const path = join(folder, "notes.xlsx");
    writeFileSync(path, "Dear crew");
    await openDemo();
    const before = await session.read("Start", "B2");
    await session.openFile(path);
    await session.says().toBe("notes.xlsx was not opened: the file is not an .xlsx workbook.");
    expect(await session.read("Start", "B2")).toBe(before);
  });

  it("asks nothing when another is opened over a changed one, which is kept", async () => {
    await openAs("first.xlsx", "xlsxwriter");
    const asked: string[] = [];
    page.on("dialog", (dialog) => {
      asked.push(dialog.type());
      void dialog.dismiss();
    });
    onTestFinished(() => void page.removeAllListeners("dialog"));
    await type("B2", "120");
    await session.shows(log, "B2").toBe(120);
    await openAs("second.xlsx", "exceljs");
    await session.choose("first");
    await expect.poll(() => page.title()).toBe("first – Reps to Spare");
    await session.shows(log, "F3").toBe(148);
    expect(await session.read(log, "B2")).toBe(120);
    expect(asked).toEqual([]);
  });

  it("shows a file's pictures, prints them, and saves them where they lie", async () => {
    const path = join(folder, "pictures.xlsx");
    const icon = join(ROOT, "src", "hosts", "excel", "icons", "icon-64.png");
    const book = new ExcelJS.Workbook();
    for (const name of ["Log", "Trend"]) {
      const sheet = book.addWorksheet(name);
      sheet.getCell("A1").value = 100;
      const image = book.addImage({ filename: icon, extension: "png" });
      sheet.addImage(image, { tl: { col: 1, row: 2 }, ext: { width: 200, height: 160 } });
    }
    await book.xlsx.writeFile(path);
    await session.openFile(path);
    await session.says().toBe("pictures.xlsx is open.");

    for (const name of ["Log", "Trend"]) {
      await session.show(name);
      // The icon's ground is the accent, which no cell here has.
      await expect.poll(() => pixelsOf(page.locator("#workbook"), accent)).toBeGreaterThan(1000);
    }

    await page.evaluate(() => {
      window.print = () => {
        const image = document.querySelector<HTMLImageElement>("#print .picture img");
        document.title = `printing ${image?.naturalWidth}`;
      };
    });
    await session.press("Print");
    await expect.poll(() => page.title()).toBe("printing 64");
    const printed = page.locator("#print .picture");
    expect(await printed.count()).toBe(1);
    expect(
      await printed.evaluate(({ style }) => [style.width, style.height, style.transform]),
    ).toEqual(["200px", "160px", "rotate(0deg) scale(1, 1)"]);

    const before = picturesOf(readData(new Uint8Array(readFileSync(path))));
    const after = picturesOf(readData(await saveAs("pictures.xlsx")));
    const places = (pictures: Pictures) =>
      [...pictures.values()].flatMap((ofSheet) =>
        ofSheet.map(({ sheetTransform: { from, to }, source }) => ({ from, to, source })),
      );
    expect(places(after)).toEqual(places(before));

    // Looked at only: nothing is lost by opening another.
    await openAs("third.xlsx", "exceljs");
    expect(session.complaints).toEqual([]);
  });

  it("opens a file with a damaged picture, without it, and says so", async () => {
    const path = join(folder, "damaged.xlsx");
    const book = new ExcelJS.Workbook();
    const sheet = book.addWorksheet("Log");
    const image = book.addImage({
      buffer: Buffer.from("not a picture") as unknown as ExcelJS.Buffer,
      extension: "png",
    });
    sheet.addImage(image, { tl: { col: 1, row: 2 }, ext: { width: 200, height: 160 } });
    await book.xlsx.writeFile(path);
    await session.openFile(path);
    await session
      .says()
      .toBe("damaged.xlsx is open. A copy saved here will not have its damaged pictures.");
    await type("A5", "12345");
    await session.shows("Log", "A5").toBe(12345);
    expect(session.complaints).toEqual([]);
  });

  it("prints the sheet that is shown on one page, from a phone as well", async () => {
    await openDemo();
    await page.setViewportSize({ width: 390, height: 844 });
    onTestFinished(() => page.setViewportSize(usualSize));
    await page.evaluate(() => void (window.print = () => undefined));
    await session.show("Percentages");
    await session.shows("Start", "C11").toBe(112.5);
    for (const name of ["Open", "Save", "Print"]) {
      const box = (await page.getByRole("button", { name, exact: true }).boundingBox())!;
      expect(box.x + box.width).toBeLessThanOrEqual(390);
    }
    await session.press("Print");
    const printed = page.locator("#print td");
    await expect.poll(() => printed.allTextContents()).toContain("93.8%");
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  });
});
