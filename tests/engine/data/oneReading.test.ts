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
  it.each(["sharedStrings", "styles", "theme"])("%s", (type) => {
    const bytes = buildBook({
      sheets: { Log: `<row r="1"><c r="A1"><v>1</v></c></row>` },
      references: { "xl/workbook.xml": [[type, `${type}.xml`]] },
    });
    expect(refusal(bytes)).toBe(`the file is damaged: "xl/${type}.xml" is missing`);
  });

  it("table", () => {
    const bytes = buildBook({
      sheets: { Log: worksheet(`<row r="1"><c r="A1"><v>1</v></c></row>`) },
      references: { "xl/worksheets/sheet1.xml": [["table", "../tables/table1.xml"]] },
    });
    expect(refusal(bytes)).toBe(`the file is damaged: "xl/tables/table1.xml" is missing`);
  });
});
