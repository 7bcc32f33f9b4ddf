import { areaAddress, cellAddress, parseCell } from "../../../src/formula/address";
import { toFile } from "../../../src/formula/future";
import { escapeXml } from "../../../src/xlsx/package";
import { buildBook } from "../../cli/support";
import { elementAt, named } from "../../present";
import type { Rows } from "./book";
import { names, sheets, table } from "./book";
import { isError, type CellValue } from "../../../src/xlsx/model";
import type { Case, Values } from "./cases";

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

/** A workbook as somebody saved it: what its formulas come to, and formulas in cells that else hold a number. */
export interface Saved {
  values(one: Case): Values;
  /** By `Sheet!A1`. */
  readonly formulas: Readonly<Record<string, string>>;
}

/** The workbook with all of the formulas, and none of their values unless it is to be as saved, as a file. */
export function buildWorkbook(cases: readonly Case[], saved?: Saved): Uint8Array {
  const rows: Record<string, string> = {};
  for (const [one, { sheet, row, column }] of place(cases)) {
    const { formula, isArray, rows: high, columns } = one;
    const area = {
      startRow: row,
      startColumn: column,
      endRow: row + high - 1,
      endColumn: column + columns - 1,
    };
    const array = isArray ? ` t="array" ref="${areaAddress(area)}"` : "";
    const cm = isArray ? ` cm="1"` : "";
    const text = escapeXml(toFile(formula).replace(/^=/, ""));
    const values = saved?.values(one) ?? [[null]];
    rows[sheet] ??= "";
    rows[sheet] += values
      .map((line, down) => {
        const written = line.map((value, right) => {
          const own = down === 0 && right === 0 ? `<f${array}>${text}</f>` : "";
          return valueXml(cellAddress(row + down, column + right), value, own, own && cm);
        });
        return `<row r="${row + down + 1}">${written.join("")}</row>`;
      })
      .join("");
  }
  const data = Object.entries(sheets).map(
    ([name, content]) => [name, sheetXml(name, content, saved)] as const,
  );
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

function sheetXml(sheet: string, rows: Rows, saved: Saved | undefined): string {
  return rows
    .map((cells, row) => {
      const written = cells.map((cell, column) => {
        const address = cellAddress(row, column);
        const formula = saved?.formulas[`${sheet}!${address}`];
        return formula !== undefined && typeof cell !== "object"
          ? valueXml(address, cell, `<f>${escapeXml(formula)}</f>`)
          : cellXml(address, cell, saved !== undefined);
      });
      return `<row r="${row + 1}">${written.join("")}</row>`;
    })
    .join("");
}

function cellXml(address: string, cell: Rows[number][number], isSaved: boolean): string {
  if (cell === null) return "";
  if (typeof cell === "object") {
    return valueXml(address, isSaved ? cell.saved : null, `<f>${escapeXml(cell.formula)}</f>`);
  }
  if (typeof cell === "string") {
    return `<c r="${address}" t="inlineStr"><is><t xml:space="preserve">${escapeXml(cell)}</t></is></c>`;
  }
  return valueXml(address, cell, "");
}

/** A cell with a value, or none, behind its formula, if it has one. */
function valueXml(address: string, value: CellValue, formula: string, marks = ""): string {
  const type =
    typeof value === "boolean"
      ? ` t="b"`
      : typeof value === "string"
        ? ` t="${isError(value) ? "e" : "str"}"`
        : "";
  const text = typeof value === "boolean" ? Number(value) : escapeXml(String(value));
  const held = value === null ? "" : `<v>${text}</v>`;
  return `<c r="${address}"${type}${marks}>${formula}${held}</c>`;
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
