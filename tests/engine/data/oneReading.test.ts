import type { ICellData } from "@univerjs/core";
import { CellValueType } from "@univerjs/core";
import { beforeAll, describe, expect, it } from "vitest";
import { calculationData } from "../../../src/engine/data/calculationData";
import { workbookData } from "../../../src/engine/data";
import { cellAddress, contains } from "../../../src/formula/address";
import type { Outcome } from "../../../src/recalculate/calculate";
import { bookOf } from "../../../src/recalculate/book";
import { plainCopy } from "../../../src/recalculate/copies/plain";
import type { CellValue } from "../../../src/xlsx/model";
import { refuseAbsentParts } from "../../../src/xlsx/read/absentParts";
import { isDateFormat } from "../../../src/xlsx/numberFormats";
import type { ReadWorkbook } from "../../../src/xlsx";
import { readPackage, readWorkbook, writePackage } from "../../../src/xlsx";
import { buildBook, worksheet } from "../../cli/support";
import { hasLibreOffice } from "../../libreOffice";
import { elementAt, named, only } from "../../present";
import { demoBytes } from "../../theDemo";
import { readByLibreOffice, type FoundCells } from "../../xlsx/libreOfficeCells";
import { bytesOf, files } from "../../xlsx/support";

/*
 * A workbook is read once, and every part of the program goes on from that: what stands in a cell is the
 * same in the page, in what is computed and in a copy, and the same that another program finds there.
 */

const styles = [
  `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><fonts count="1"><font/></fonts>` +
    `<fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs>` +
    `<cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>`,
  "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml",
] as const;

/** A workbook of one sheet, "Log", whose style 1 shows dates. */
const bookOfCells = (cells: string, properties = "") =>
  buildBook({
    sheets: { Log: `<row r="1">${cells}</row>` },
    properties,
    parts: { "xl/styles.xml": styles },
    references: { "xl/workbook.xml": [["styles", "styles.xml"]] },
  });

const dates =
  `<c r="A1" s="1" t="d"><v>2026-01-05</v></c><c r="B1" s="1" t="d"><v>2026-01-05T18:00:00Z</v></c>` +
  `<c r="C1" s="1" t="d"><v>1900-01-05T00:00:00</v></c><c r="D1" s="1"><v>46027</v></c>`;

const generated = {
  "dates that are written out": bookOfCells(dates.replace(/<c r="C1".*?<\/c>/, "")),
  "such dates where days count from 1904": bookOfCells(
    dates.replace(/<c r="C1".*?<\/c>/, ""),
    `<workbookPr date1904="1"/>`,
  ),
  "characters by their codes": bookOfCells(
    `<c r="A1" t="inlineStr"><is><t>a _x005F_x0041_</t></is></c><c r="B1" t="str"><f>"_x0041_"&amp;"b"</f><v>_x005F_x0041_b</v></c>`,
  ),
  "blanks around values": bookOfCells(
    `<c r="A1"><v> 2.5 </v></c><c r="B1"><v>\n-1e3</v></c><c r="C1" t="b"><v>1</v></c><c r="D1" t="b"><v>0</v></c>`,
  ),
};

async function bytesByName(): Promise<[string, Uint8Array][]> {
  return [
    ...files.map((name): [string, Uint8Array] => [name, bytesOf(name)]),
    ...Object.entries(generated),
    ["the demo", await demoBytes()],
  ];
}
const fixtures = await bytesByName();

interface Found {
  readonly sheet: string;
  readonly address: string;
  readonly value: CellValue;
}

/** Every cell that holds a value of its own: formulas and what they spilled are left aside. */
function ownValues({ sheets }: ReadWorkbook): (Found & { style: number })[] {
  return sheets.flatMap(({ name, rows }) => {
    const cells = rows.flatMap((row) => row.cells);
    const arrays = cells.flatMap(({ formula }) => formula?.area ?? []);
    return cells
      .filter(({ row, column }) => !arrays.some((area) => contains(area, row, column)))
      .filter(({ value }) => value !== null)
      .map(({ row, column, value, style }) => {
        return { sheet: name, address: cellAddress(row, column), value, style };
      });
  });
}

/** What LibreOffice finds in each of the workbooks, once it has been asked for all of them. */
const byLibreOffice = new Map<Uint8Array, FoundCells>();
beforeAll(() => {
  if (!hasLibreOffice) return;
  const workbooks = fixtures.map(([, bytes]) => bytes);
  const found = readByLibreOffice(workbooks);
  workbooks.forEach((bytes, at) => byLibreOffice.set(bytes, elementAt(found, at)));
});

/** What the engine keeps of a value. */
function kept(cell: ICellData | undefined): CellValue {
  if (cell?.v === undefined || cell.v === null) return null;
  return cell.t === CellValueType.BOOLEAN ? cell.v === 1 : cell.v;
}

describe.each(fixtures)("a workbook is read once for all: %s", (_, bytes) => {
  const book = readWorkbook(readPackage(bytes));
  const own = ownValues(book);
  const places = new Map(
    book.sheets.flatMap(({ name, rows }, index) =>
      rows.flatMap(({ cells }) =>
        cells.map(({ row, column }) => {
          return [`${name}!${cellAddress(row, column)}`, { id: `sheet${index + 1}`, row, column }];
        }),
      ),
    ) as [string, { id: string; row: number; column: number }][],
  );

  it("for the page, whose dates count from 1900", () => {
    const data = workbookData(book);
    for (const { sheet, address, value, style } of own) {
      const { id, row, column } = places.get(`${sheet}!${address}`)!;
      const format = book.styles[style]?.format;
      const later = book.from1904 && typeof value === "number" && format && isDateFormat(format);
      const shown = later ? Number(value) + 1462 : value;
      const cell = named(data.sheets, id).cellData?.[row]?.[column];
      expect([address, kept(cell)]).toEqual([address, shown]);
    }
  });

  it("for what is computed", () => {
    const data = calculationData(book, { formulas: [], changed: [] });
    for (const { name, rows } of book.sheets) {
      for (const { row, column, value } of rows.flatMap(({ cells }) => cells)) {
        const { id } = places.get(`${name}!${cellAddress(row, column)}`)!;
        expect(kept(named(data.sheets, id).cellData?.[row]?.[column])).toBe(value);
      }
    }
  });

  it("for a copy, which reads again as it was", () => {
    const asSaved = bookOf(book);
    const outcomes = asSaved.formulas.map((cell): Outcome => {
      return { cell, ours: false, area: cell.area, values: [[cell.saved]], left: "", failures: [] };
    });
    const copy = readWorkbook(readPackage(writePackage(plainCopy(asSaved, outcomes).file)));
    const valuesIn = ({ sheets }: ReadWorkbook) =>
      sheets.flatMap(({ rows }) =>
        rows.flatMap(({ cells }) => cells.map(({ row, column, value }) => [row, column, value])),
      );
    expect(valuesIn(copy)).toEqual(valuesIn(book));
  });

  it.skipIf(!hasLibreOffice)("as LibreOffice reads it", () => {
    const found = byLibreOffice.get(bytes)!;
    expect([...found.keys()]).toEqual(book.sheets.map(({ name }) => name));
    const theirs = own.map(({ sheet, address }) => {
      return { sheet, address, value: found.get(sheet)!.get(address) ?? null };
    });
    const ours = own.map(({ sheet, address, value, style }) => {
      const format = book.styles[style]?.format;
      const isDate = typeof value === "number" && format !== undefined && isDateFormat(format);
      return { sheet, address, value: isDate && book.from1904 ? Number(value) + 1462 : value };
    });
    expect(rounded(theirs)).toEqual(rounded(ours));
    expect(own.length).toBeGreaterThan(0);
  });
});

/** LibreOffice writes numbers with 15 digits, and has none but numbers for truth values. */
const rounded = (cells: readonly Found[]) =>
  cells.map(({ value, ...cell }) => {
    const isNumber = typeof value === "number" || typeof value === "boolean";
    return { ...cell, value: isNumber ? Number(Number(value).toPrecision(13)) : value };
  });

describe("a value is what Excel takes it for", () => {
  const valuesOf = (bytes: Uint8Array) =>
    ownValues(readWorkbook(readPackage(bytes))).map(({ value }) => value);

  it("a date that is written out is its serial number, in the workbook's own count", () => {
    // 5 January 2026 is day 46027 (Excel's own, as in any of its files); day 5 is 5 January 1900.
    expect(valuesOf(bookOfCells(dates))).toEqual([46_027, 46_027.75, 5, 46_027]);
    expect(valuesOf(generated["such dates where days count from 1904"])).toEqual([
      46_027 - 1462,
      46_027.75 - 1462,
      46_027,
    ]);
    expect(valuesOf(bookOfCells(`<c r="A1" t="d"><v>06:00:00</v></c>`))).toEqual([0.25]);
  });

  it("a character code is its character in texts and stays in formulas", () => {
    // LibreOffice leaves codes of characters that need none as they are, so Excel's reading of them is from memory.
    const cells =
      `<c r="A1" t="inlineStr"><is><t>_x0041_ _x005F_x0041_</t></is></c>` +
      `<c r="B1" t="str"><f>"_x0041_"&amp;"b"</f><v>_x005F_x0041_b</v></c>`;
    const { rows } = only(readWorkbook(readPackage(bookOfCells(cells))).sheets);
    expect(only(rows).cells).toMatchObject([
      { value: "A _x0041_" },
      { value: "_x0041_b", formula: { text: '"_x0041_"&"b"' } },
    ]);
  });

  it("blanks around a number or a truth value do not count", () => {
    expect(valuesOf(generated["blanks around values"])).toEqual([2.5, -1000, true, false]);
    const truths = `<c r="A1" t="b"><v> 1</v></c><c r="B1" t="b"><v>false </v></c>`;
    expect(valuesOf(bookOfCells(truths))).toEqual([true, false]);
  });
});

const refusal = (bytes: Uint8Array): string => {
  try {
    readWorkbook(readPackage(bytes));
  } catch (error) {
    return (error as Error).message;
  }
  throw new Error("the file was read");
};

describe("a damaged value is a refusal that names the cell", () => {
  it.each([
    [`<c r="B1"><v>abc</v></c>`, `Log!B1 holds "abc" as a number`],
    [`<c r="B1"><v>1E999</v></c>`, `Log!B1 holds "1E999" as a number`],
    [`<c r="B1"><v>0x10</v></c>`, `Log!B1 holds "0x10" as a number`],
    [`<c r="B1" t="s"><v>0</v></c>`, `Log!B1 holds "0" as a shared text`],
    [`<c r="B1" t="b"><v>yes</v></c>`, `Log!B1 holds "yes" as a truth value`],
    [`<c r="B1" t="d"><v>5 Jan</v></c>`, `Log!B1 holds "5 Jan" as a date`],
    [`<c r="B1" t="x"><v>1</v></c>`, `Log!B1 holds "1" as the unknown type "x"`],
  ])("%s", (cell, reason) => {
    expect(refusal(bookOfCells(cell))).toBe(`the file is damaged: ${reason}`);
  });
});

describe("a part that is related and absent is a refusal that names it", () => {
  const five = `<row r="1"><c r="A1"><v>5</v></c></row>`;
  const workbook = "xl/workbook.xml";
  const sheet = "xl/worksheets/sheet1.xml";
  const drawing = "xl/drawings/drawing1.xml";
  const boxes = "xl/drawings/vmlDrawing1.vml";
  const cache = "xl/pivotCache/pivotCacheDefinition1.xml";
  const there: Record<string, readonly [string, string]> = {
    [drawing]: [`<wsDr/>`, "application/vnd.openxmlformats-officedocument.drawing+xml"],
    [boxes]: [`<xml/>`, "application/vnd.openxmlformats-officedocument.vmlDrawing"],
    [cache]: [`<pivotCacheDefinition/>`, "application/xml"],
  };

  type Reference = readonly [from: string, type: string, target: string];

  /** A workbook whose sheet names its first two references, as one with drawings does. */
  const bookReferring = (references: readonly Reference[], named = "rId1", mode = "") =>
    withReferences(
      buildBook({
        sheets: {
          Log: worksheet(five, `<drawing r:id="${named}"/><legacyDrawing r:id="rId2"/>`),
        },
        parts: Object.fromEntries(
          Object.entries(there).filter(([path]) => references.some(([from]) => from === path)),
        ),
        references: Object.fromEntries(
          references.map(([from]) => [
            from,
            references.filter((each) => each[0] === from).map(([, type, target]) => [type, target]),
          ]),
        ),
      }),
      mode,
    );

  /** The book with all that it refers to from a sheet marked so. */
  function withReferences(bytes: Uint8Array, mode: string): Uint8Array {
    const file = readPackage(bytes);
    const path = "xl/worksheets/_rels/sheet1.xml.rels";
    const text = new TextDecoder().decode(file.parts.get(path));
    if (mode) file.parts.set(path, new TextEncoder().encode(text.replaceAll("/>", ` ${mode}/>`)));
    return writePackage(file);
  }

  const onSheet = (target: string): Reference => [sheet, "drawing", target];
  const inBoxes: Reference[] = [
    [sheet, "theme", "/xl/workbook.xml"],
    [sheet, "vmlDrawing", "../drawings/vmlDrawing1.vml"],
  ];

  it.each<[what: string, path: string, references: readonly Reference[]]>([
    ["texts", "xl/sharedStrings.xml", [[workbook, "sharedStrings", "sharedStrings.xml"]]],
    ["looks", "xl/styles.xml", [[workbook, "styles", "styles.xml"]]],
    ["colours", "xl/theme/theme1.xml", [[workbook, "theme", "theme/theme1.xml"]]],
    ["another sheet", "xl/sheet9.xml", [[workbook, "worksheet", "sheet9.xml"]]],
    ["macros", "xl/vbaProject.bin", [[workbook, "vbaProject", "vbaProject.bin"]]],
    ["another workbook", "xl/link1.xml", [[workbook, "externalLink", "link1.xml"]]],
    ["a pivot table's values", cache, [[workbook, "pivotCacheDefinition", `/${cache}`]]],
    [
      "their records",
      "xl/pivotCache/records1.xml",
      [
        [workbook, "pivotCacheDefinition", `/${cache}`],
        [cache, "pivotCacheRecords", "records1.xml"],
      ],
    ],
    ["a table", "xl/tables/table1.xml", [[sheet, "table", "../tables/table1.xml"]]],
    ["a pivot table", "xl/pivotTables/a.xml", [[sheet, "pivotTable", "../pivotTables/a.xml"]]],
    ["notes", "xl/comments1.xml", [[sheet, "comments", "../comments1.xml"]]],
    ["comments", "xl/threads/a.xml", [[sheet, "threadedComment", "../threads/a.xml"]]],
    ["a picture behind the cells", "xl/a.png", [[sheet, "image", "../a.png"]]],
    ["what no program knows yet", "xl/a.xml", [[sheet, "hologram", "../a.xml"]]],
    ["a drawing", drawing, [onSheet("../drawings/drawing1.xml")]],
    ["the boxes of notes", boxes, inBoxes],
    [
      "a picture on a drawing",
      "xl/media/image1.png",
      [onSheet(`/${drawing}`), [drawing, "image", "../media/image1.png"]],
    ],
    [
      "a chart on a drawing",
      "xl/charts/chart1.xml",
      [onSheet(`/${drawing}`), [drawing, "chart", "../charts/chart1.xml"]],
    ],
    [
      "a picture in a note",
      "xl/media/note.png",
      [...inBoxes, [boxes, "image", "../media/note.png"]],
    ],
  ])("%s: %s", (_what, path, references) => {
    const bytes = bookReferring(references);
    expect(refusal(bytes)).toBe(`the file is damaged: "${path}" is missing`);
    const file = readPackage(bytes);
    file.parts.set(path.toUpperCase(), new TextEncoder().encode("<there/>"));
    expect(refuses(() => refuseAbsentParts(file, workbook))).toBe(false);
  });

  const opens = (bytes: Uint8Array) =>
    ownValues(readWorkbook(readPackage(bytes))).map(({ value }) => value);

  it.each<[what: string, references: readonly Reference[]]>([
    ["how a printer was set up", [[sheet, "printerSettings", "../printerSettings1.bin"]]],
    ["the order of calculation", [[workbook, "calcChain", "calcChain.xml"]]],
    ["a place in the workbook to go to", [[sheet, "hyperlink", "#Log!A1"]]],
    ["what other programs keep", [[workbook, "customXml", "../customXml/item1.xml"]]],
    [
      "a picture that was taken away",
      [onSheet(`/${drawing}`), [drawing, "image", "NULL"], [sheet, "vmlDrawing", "NULL"]],
    ],
  ])("but not of what holds nothing of the sheet: %s", (_what, references) => {
    expect(opens(bookReferring(references))).toEqual([5]);
  });

  it("nor of a drawing that the sheet does not name, as openxlsx refers to one from every sheet", () => {
    const references: Reference[] = [
      onSheet("../drawings/drawing1.xml"),
      [sheet, "printerSettings", "../printerSettings/printerSettings1.bin"],
      [sheet, "vmlDrawing", "../drawings/vmlDrawing1.vml"],
    ];
    expect(opens(bookReferring(references, "rId9"))).toEqual([5]);
  });

  it("nor of what lies outside the file, which is read by nobody", () => {
    const image: Reference = [sheet, "image", "https://example.org/a.png"];
    expect(opens(bookReferring([image], "rId9", `TargetMode="External"`))).toEqual([5]);
    expect(opens(bookReferring([image], "rId9", `TargetMode="external"`))).toEqual([5]);
  });
});

function refuses(read: () => void): boolean {
  try {
    read();
  } catch {
    return true;
  }
  return false;
}
