import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { IWorkbookData } from "@univerjs/core";
import ExcelJS from "exceljs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { lossesOf, readPackage } from "../../../src/xlsx";
import { toDataAddress } from "../../../src/engine/data/dataAddress";
import { partAt } from "../../../src/xlsx/package";
import type { PlacedPicture } from "../../../src/engine/data/pictures";
import { picturesOf, withPictures } from "../../../src/engine/data/pictures";
import { convert, hasLibreOffice } from "../../libreOffice";
import { elementAt, named, only } from "../../present";
import { hasValidator, validateFile } from "../../validator";
import { readData, writeData } from "./support";

const icons = join(import.meta.dirname, "../../../src/hosts/excel/icons");
const small = new Uint8Array(readFileSync(join(icons, "icon-16.png")));
const large = new Uint8Array(readFileSync(join(icons, "icon-64.png")));

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "pictures-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

function onDisk(name: string, bytes: Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
}

/** A workbook from a library of somebody else's: ExcelJS (MIT). */
async function fileOf(fill: (book: ExcelJS.Workbook) => void): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  fill(book);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** Two sheets: columns of 14 digits' width (98 pixels) and rows of 15 points (20 pixels). */
async function twoSheets(): Promise<Uint8Array> {
  return fileOf((book) => {
    const properties = { defaultColWidth: 14, defaultRowHeight: 15 };
    const log = book.addWorksheet("Log", { properties });
    const trend = book.addWorksheet("Trend", { properties });
    const buffer = (bytes: Uint8Array) => Buffer.from(bytes) as unknown as ExcelJS.Buffer;
    const first = book.addImage({ buffer: buffer(small), extension: "png" });
    const second = book.addImage({ buffer: buffer(large), extension: "png" });
    log.getCell("A1").value = 100;
    log.addImage(first, { tl: { col: 1, row: 2 }, ext: { width: 196, height: 60 } });
    log.addImage(second, "C8:E12");
    trend.addImage(first, { tl: { col: 0, row: 0 }, ext: { width: 32, height: 32 } });
  });
}

/** What the writer asks of an open workbook; its cells are not what is looked at here. */
const write = (data: IWorkbookData) =>
  writeData({ save: () => data, read: () => null, spill: () => undefined });

const again = (data: IWorkbookData) => readData(write(data));

const picturesBySheet = (data: IWorkbookData) =>
  Object.fromEntries(
    [...picturesOf(data)].map(([id, pictures]) => [named(data.sheets, id).name, pictures]),
  );

/** The file with the text of one part changed. */
function withPart(bytes: Uint8Array, path: string, change: (text: string) => string): Uint8Array {
  const parts = unzipSync(bytes);
  const before = strFromU8(named(parts, path));
  const after = change(before);
  expect(after).not.toBe(before);
  return zipSync({ ...parts, [path]: strToU8(after) });
}

describe("pictures in a workbook's file", () => {
  it("are read where they lie, each on its own sheet", async () => {
    const { Log, Trend } = picturesBySheet(readData(await twoSheets()));
    expect(Log).toHaveLength(2);
    expect(Log[0]).toMatchObject({
      source: toDataAddress("image/png", small),
      // Its size alone is given: 196 by 60 pixels are two columns and three rows.
      sheetTransform: { from: { column: 1, row: 2 }, to: { column: 3, row: 5 } },
      transform: { left: 98, top: 40, width: 196, height: 60 },
      anchorType: "0",
    });
    expect(Log[1]).toMatchObject({
      source: toDataAddress("image/png", large),
      sheetTransform: { from: { column: 2, row: 7 }, to: { column: 5, row: 12 } },
      transform: { left: 196, top: 140, width: 294, height: 100 },
    });
    expect(Trend).toHaveLength(1);
    expect(lossesOf(readPackage(await twoSheets()))).toEqual([]);
  });

  it("are the same after the workbook was written and read", async () => {
    const data = readData(await twoSheets());
    expect(picturesBySheet(again(data))).toEqual(picturesBySheet(data));
  });

  it("are found there by another program, at the same cells", async () => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(write(readData(await twoSheets())).buffer as ArrayBuffer);
    const images = book.getWorksheet("Log")!.getImages();
    expect(
      images.map(({ range }) => [range.tl.col, range.tl.row, range.br.col, range.br.row]),
    ).toEqual([
      [1, 2, 3, 5],
      [2, 7, 5, 12],
    ]);
    const medium = book.getImage(Number(elementAt(images, 1).imageId));
    expect(new Uint8Array(medium.buffer as unknown as ArrayBuffer)).toEqual(large);
  });

  it.skipIf(!hasValidator)("pass the Open XML SDK's validator", async () => {
    const data = readData(await twoSheets());
    const path = onDisk("valid.xlsx", write(turned(data, 90)));
    expect(validateFile(path)).toMatchObject({ ok: true, errors: [] });
  });

  it("are one file each, however often they are placed", async () => {
    const parts = [...readPackage(write(readData(await twoSheets()))).parts.keys()];
    expect(parts.filter((path) => path.startsWith("xl/media/"))).toEqual([
      "xl/media/image1.png",
      "xl/media/image2.png",
    ]);
  });

  it("keep what they show in words, line breaks and all", async () => {
    const description = 'Rises from "100" to\n120 kg & holds, <sure>';
    const data = changed(readData(await twoSheets()), (picture) => ({ ...picture, description }));
    expect(picturesBySheet(again(data)).Log[0].description).toBe(description);
  });

  it("keep how they are cut, turned and mirrored", async () => {
    const cut = { left: 10, top: 5, right: 20, bottom: 0 };
    const data = changed(turned(readData(await twoSheets()), 30), (picture) => ({
      ...picture,
      srcRect: cut,
      sheetTransform: { ...picture.sheetTransform, flipX: true },
    }));
    const [first] = picturesBySheet(again(data)).Log;
    expect(first.sheetTransform).toMatchObject({ angle: 30, flipX: true, flipY: false });
    // A file has them in thousandths of a percent of the whole picture.
    for (const edge of ["left", "top", "right", "bottom"] as const) {
      expect(first.srcRect![edge]).toBeCloseTo(cut[edge], 2);
    }
  });

  // A file holds a picture that lies on its side by the rectangle of its quarter turn (common
  // practice of the programs that write such files, from memory; the spreadsheet library agrees).
  it.each([0, 44, 45, 90, 134, 135, 180, 270, 314, 315])(
    "lie at the same cells again when they are turned by %d degrees",
    async (angle) => {
      const data = turned(readData(await twoSheets()), angle);
      const [, before] = picturesBySheet(data).Log;
      const [, after] = picturesBySheet(again(data)).Log;
      const { left, top, width, height } = before.transform!;
      expect(after.transform!.left).toBeCloseTo(left, 3);
      expect(after.transform!.top).toBeCloseTo(top, 3);
      expect(after.transform!.width).toBeCloseTo(width, 3);
      expect(after.transform!.height).toBeCloseTo(height, 3);
      expect(after.sheetTransform.angle).toBe(angle);
    },
  );

  it("find room on the sheet however far from its cells they lie", async () => {
    const moved = withPart(await twoSheets(), "xl/drawings/drawing1.xml", (text) =>
      text.replace(/<xdr:col>1<(.*?)<xdr:row>2</s, "<xdr:col>300<$1<xdr:row>500000<"),
    );
    const data = readData(moved);
    const { Log } = picturesBySheet(data);
    expect(Log[0].sheetTransform).toMatchObject({
      from: { column: 300, row: 500_000 },
      to: { column: 302, row: 500_003 },
    });
    const sheet = Object.values(data.sheets).find(({ name }) => name === "Log")!;
    expect(sheet.rowCount).toBeGreaterThan(500_003);
    expect(sheet.columnCount).toBeGreaterThan(302);
  });

  it("are whole on a sheet of narrow columns and low rows", async () => {
    const data = readData(
      await fileOf((book) => {
        const sheet = book.addWorksheet("Log", {
          properties: { defaultColWidth: 2, defaultRowHeight: 6 },
        });
        const image = book.addImage({
          buffer: Buffer.from(small) as unknown as ExcelJS.Buffer,
          extension: "png",
        });
        sheet.addImage(image, { tl: { col: 0, row: 0 }, ext: { width: 1400, height: 4000 } });
      }),
    );
    // Columns of 14 pixels and rows of 8.
    expect(picturesBySheet(data).Log[0].sheetTransform.to).toMatchObject({ column: 100, row: 500 });
    const sheet = only(Object.values(data.sheets));
    expect(sheet.columnCount).toBeGreaterThan(100);
    expect(sheet.rowCount).toBeGreaterThan(500);
  });

  it("have names of their own across the sheets", async () => {
    const { Log, Trend } = picturesBySheet(readData(await twoSheets()));
    expect(new Set([...Log, ...Trend].map(({ drawingId }) => drawingId)).size).toBe(3);
  });

  it("that claim to lie beyond the last row there is are left out", async () => {
    const beyond = withPart(await twoSheets(), "xl/drawings/drawing1.xml", (text) =>
      text.replace("<xdr:row>2<", "<xdr:row>2147483647<"),
    );
    expect(picturesBySheet(readData(beyond)).Log).toHaveLength(1);
  });

  it("take no room where columns are hidden", async () => {
    const data = readData(
      await fileOf((book) => {
        const sheet = book.addWorksheet("Log", {
          properties: { defaultColWidth: 14, defaultRowHeight: 15 },
        });
        sheet.getColumn(3).hidden = true;
        const picture = book.addImage({
          buffer: Buffer.from(small) as unknown as ExcelJS.Buffer,
          extension: "png",
        });
        sheet.addImage(picture, { tl: { col: 1, row: 0 }, ext: { width: 196, height: 40 } });
      }),
    );
    expect(picturesBySheet(data).Log[0].sheetTransform.to).toMatchObject({ column: 4, row: 2 });
  });

  it("are named as lost where browsers do not show them, and so are charts and shapes", async () => {
    const bytes = await twoSheets();
    const drawing = "xl/drawings/drawing1.xml";
    const referring = withPart(bytes, "xl/drawings/_rels/drawing1.xml.rels", (text) =>
      text.replace(/image1\.png/, "image1.emf"),
    );
    const ofUnknownKind = zipSync({ ...unzipSync(referring), "xl/media/image1.emf": strToU8("") });
    expect(lossesOf(readPackage(ofUnknownKind))).toEqual(["pictures that browsers do not show"]);
    expect(picturesBySheet(readData(ofUnknownKind)).Log).toHaveLength(1);
    const withChart = withPart(bytes, drawing, (text) =>
      text.replace(/<xdr:pic>.*?<\/xdr:pic>/s, "<xdr:graphicFrame/>"),
    );
    expect(lossesOf(readPackage(withChart))).toEqual(["charts"]);
    expect(picturesBySheet(readData(withChart)).Log).toHaveLength(1);
  });

  it("outside the file are not fetched", async () => {
    const outside = withPart(await twoSheets(), "xl/drawings/_rels/drawing1.xml.rels", (text) =>
      text.replaceAll(
        /Target="[^"]*"/g,
        'Target="https://example.org/a.png" TargetMode="External"',
      ),
    );
    expect(picturesBySheet(readData(outside)).Log).toBeUndefined();
    expect(lossesOf(readPackage(outside))).toEqual(["pictures that browsers do not show"]);
  });

  it("without a place do not keep a workbook from opening", async () => {
    const placeless = withPart(await twoSheets(), "xl/drawings/drawing1.xml", (text) =>
      text.replaceAll(/<xdr:from>.*?<\/xdr:from>/gs, ""),
    );
    expect(picturesBySheet(readData(placeless)).Log).toBeUndefined();
  });

  it("without their bytes are refused by their name", async () => {
    const parts = unzipSync(await twoSheets());
    delete parts["xl/media/image1.png"];
    expect(() => readData(zipSync(parts))).toThrow(
      'the file is damaged: "xl/media/image1.png" is missing',
    );
  });

  it("in a drawing that nobody can read are named as lost, and the workbook opens", async () => {
    const damaged = withPart(await twoSheets(), "xl/drawings/drawing1.xml", (text) =>
      text.replace("</xdr:pic>", ""),
    );
    expect(lossesOf(readPackage(damaged))).toEqual(["drawings that could not be read"]);
    const data = readData(damaged);
    expect(picturesBySheet(data).Log).toBeUndefined();
    expect(picturesBySheet(data).Trend).toHaveLength(1);
    expect(Object.values(data.sheets)[0]?.cellData?.[0]?.[0]?.v).toBe(100);
  });

  it("of a workbook without any leave no trace in its file", async () => {
    const bytes = await fileOf((book) => void (book.addWorksheet("Log").getCell("A1").value = 1));
    const file = readPackage(write(readData(bytes)));
    expect([...file.parts.keys()].filter((path) => /drawing|media/.test(path))).toEqual([]);
    expect(partAt(file, "xl/worksheets/_rels/sheet1.xml.rels")).toBeUndefined();
  });

  it.skipIf(!hasLibreOffice)("are kept by LibreOffice, at the same cells", async () => {
    const path = onDisk("ours.xlsx", write(readData(await twoSheets())));
    const out = join(folder, "theirs");
    convert([path], "xlsx", out);
    const { Log, Trend } = picturesBySheet(
      readData(new Uint8Array(readFileSync(join(out, "ours.xlsx")))),
    );
    const topLeft = (pictures: readonly PlacedPicture[]) =>
      pictures.map(({ sheetTransform: { from } }) => [from.column, from.row]);
    expect(topLeft(Log)).toEqual([
      [1, 2],
      [2, 7],
    ]);
    expect(topLeft(Trend)).toEqual([[0, 0]]);
  });
});

/** A workbook with each of its pictures changed. */
function changed(
  data: IWorkbookData,
  change: (picture: PlacedPicture) => PlacedPicture,
): IWorkbookData {
  const pictures = [...picturesOf(data)].map(([id, ofSheet]) => [id, ofSheet.map(change)] as const);
  return withPictures(data, new Map(pictures));
}

function turned(data: IWorkbookData, angle: number): IWorkbookData {
  return changed(data, (picture) => ({
    ...picture,
    sheetTransform: { ...picture.sheetTransform, angle },
  }));
}
