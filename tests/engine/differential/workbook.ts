import { areaAddress, cellAddress, parseCell } from "../../../src/formula/address";
import { toFile } from "../../../src/formula/future";
import { escapeXml } from "../../../src/xlsx/package";
import { buildBook } from "../../cli/support";
import { elementAt, named } from "../../present";
import type { Rows } from "./book";
import { names, sheets, table } from "./book";
import type { Case } from "./cases";

/** Where a case stands in the workbook. */
export interface Placed {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** Every case of an area stands below the one before it, on a sheet of the area's name. */
export function place(cases: readonly Case[]): ReadonlyMap<Case, Placed> {
  const next = new Map<string, number>();
  return new Map(
    cases.map((one) => {
      const row = next.get(one.area) ?? 0;
      next.set(one.area, row + one.rows);
      return [one, { sheet: one.area, row, column: 1 }];
    }),
  );
}

/** The workbook with all of the formulas and none of their values, as a file. */
export function buildWorkbook(cases: readonly Case[]): Uint8Array {
  const rows: Record<string, string> = {};
  for (const [{ formula, isArray, rows: high, columns }, { sheet, row, column }] of place(cases)) {
    const area = {
      startRow: row,
      startColumn: column,
      endRow: row + high - 1,
      endColumn: column + columns - 1,
    };
    const array = isArray ? ` t="array" ref="${areaAddress(area)}"` : "";
    const cm = isArray ? ` cm="1"` : "";
    const text = escapeXml(toFile(formula).replace(/^=/, ""));
    rows[sheet] ??= "";
    rows[sheet] +=
      `<row r="${row + 1}"><c r="${cellAddress(row, column)}"${cm}><f${array}>${text}</f></c></row>`;
  }
  const data = Object.entries(sheets).map(([name, content]) => [name, sheetXml(content)] as const);
  const tableSheet = Object.keys(sheets).indexOf(table.sheet) + 1;
  const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  return buildBook({
    sheets: { ...Object.fromEntries(data), ...rows },
    workbook: `<definedNames>${Object.entries(names)
      .map(([name, text]) => `<definedName name="${name}">${escapeXml(text)}</definedName>`)
      .join("")}</definedNames>`,
    parts: {
      "xl/tables/table1.xml": [
        tableXml(main),
        "application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml",
      ],
    },
    references: {
      [`xl/worksheets/sheet${tableSheet}.xml`]: [["table", "/xl/tables/table1.xml"]],
    },
  });
}

function sheetXml(rows: Rows): string {
  return rows
    .map((cells, row) => {
      const written = cells.map((cell, column) => cellXml(cellAddress(row, column), cell));
      return `<row r="${row + 1}">${written.join("")}</row>`;
    })
    .join("");
}

function cellXml(address: string, cell: Rows[number][number]): string {
  if (cell === null) return "";
  if (typeof cell === "number") return `<c r="${address}"><v>${cell}</v></c>`;
  if (typeof cell === "boolean") return `<c r="${address}" t="b"><v>${Number(cell)}</v></c>`;
  if (typeof cell === "object") return `<c r="${address}"><f>${escapeXml(cell.formula)}</f></c>`;
  return `<c r="${address}" t="inlineStr"><is><t xml:space="preserve">${escapeXml(cell)}</t></is></c>`;
}

function tableXml(main: string): string {
  const headings = elementAt(named(sheets, table.sheet), 0);
  const { column } = parseCell(elementAt(table.area.split(":"), 1))!;
  if (headings.length !== column + 1) throw new Error("the table is as wide as its sheet");
  const columns = headings.map(
    (name, at) => `<tableColumn id="${at + 1}" name="${String(name)}"/>`,
  );
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n` +
    `<table xmlns="${main}" id="1" name="${table.name}" displayName="${table.name}" ref="${table.area}">` +
    `<autoFilter ref="${table.area}"/>` +
    `<tableColumns count="${columns.length}">${columns.join("")}</tableColumns></table>`
  );
}
