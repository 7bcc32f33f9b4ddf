import type { Area } from "./address";
import { cellAddress, columnLetters, quoteSheet } from "./address";
import { tokensOf } from "./tokens";

/** A table of the workbook: a named area with a heading over every column. */
export interface Table {
  readonly name: string;
  readonly sheet: string;
  readonly area: Area;
  readonly columns: readonly string[];
  readonly headerRows: number;
  readonly totalsRows: number;
}

/** Where a formula stands, which decides what "this row" and an unnamed table are. */
export interface Standing {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/**
 * Writes a formula's references into tables (`Log[load]`, `Log[@reps]`, `Log[[#All],[a]:[c]]`) as
 * plain ranges, which every spreadsheet can follow.
 */
export function resolveTables(
  formula: string,
  tables: readonly Table[],
  standing: Standing,
): string {
  if (!formula.includes("[") && tables.length === 0) return formula;
  return tokensOf(formula)
    .map(({ kind, text }) => {
      if (kind === "structured") return rangeOf(text, tables, standing) ?? text;
      if (kind !== "name") return text;
      // A table's bare name is its data.
      return tables.some((table) => sameName(table.name, text))
        ? (rangeOf(`${text}[]`, tables, standing) ?? text)
        : text;
    })
    .join("");
}

/** The rows around this one, up to the last, in which "this row" means the same: none begins or ends a table or its data. */
export function rowsAlike(tables: readonly Table[], row: number): { from: number; before: number } {
  let from = 0;
  let before = Infinity;
  for (const { area, headerRows, totalsRows } of tables) {
    const data = [area.startRow + headerRows, area.endRow + 1 - totalsRows];
    for (const border of [area.startRow, ...data, area.endRow + 1]) {
      if (border <= row) from = Math.max(from, border);
      else before = Math.min(before, border);
    }
  }
  return { from, before };
}

const sameName = (one: string, other: string) => one.toLowerCase() === other.toLowerCase();

function rangeOf(text: string, tables: readonly Table[], standing: Standing): string | undefined {
  const bracket = text.indexOf("[");
  const name = text.slice(0, bracket);
  const table = tables.find((candidate) =>
    name === "" ? standsIn(candidate, standing) : sameName(candidate.name, name),
  );
  if (!table) return undefined;
  const { items, columns } = readSpecifier(text.slice(bracket + 1, -1));
  const numbers = columns.map((column) =>
    table.columns.findIndex((title) => sameName(title, column)),
  );
  if (numbers.includes(-1)) return "#REF!";
  const rows = rowsOf(table, items, standing);
  if (!rows) return items.includes("#this row") ? "#VALUE!" : "#REF!";

  const [
    first = 0,
    last = numbers.length > 0 ? first : table.area.endColumn - table.area.startColumn,
  ] = numbers;
  const startColumn = table.area.startColumn + Math.min(first, last);
  const endColumn = table.area.startColumn + Math.max(first, last);
  const sheet = table.sheet === standing.sheet ? "" : `${quoteSheet(table.sheet)}!`;
  if (items.includes("#this row")) {
    // The row moves with the formula, as a table's own does; the columns stay.
    const cell = (column: number) => `$${columnLetters(column)}${rows.start + 1}`;
    const range = startColumn === endColumn ? "" : `:${cell(endColumn)}`;
    return sheet + cell(startColumn) + range;
  }
  const start = fixed(cellAddress(rows.start, startColumn));
  const end = fixed(cellAddress(rows.end, endColumn));
  return start === end ? sheet + start : `${sheet}${start}:${end}`;
}

function fixed(address: string): string {
  return address.replace(/([A-Z]+)(\d+)/, "$$$1$$$2");
}

function standsIn({ sheet, area }: Table, standing: Standing): boolean {
  return (
    sheet === standing.sheet &&
    standing.row >= area.startRow &&
    standing.row <= area.endRow &&
    standing.column >= area.startColumn &&
    standing.column <= area.endColumn
  );
}

/**
 * What stands between a reference's outer brackets: items (`#All`), and no column, one, or the
 * first and last of several. An apostrophe keeps the character after it from meaning anything.
 */
function readSpecifier(inside: string): { items: string[]; columns: string[] } {
  const items: string[] = [];
  const columns: string[] = [];
  const add = (text: string) => {
    if (text.startsWith("#")) items.push(text.toLowerCase());
    else if (text !== "") columns.push(text.replace(/'(.)/g, "$1"));
  };
  let rest = inside.trim();
  if (rest.startsWith("@")) {
    items.push("#this row");
    rest = rest.slice(1);
  }
  const bracketed = [...rest.matchAll(/\[((?:[^[\]']|'.)*)\]/g)];
  if (bracketed.length > 0) bracketed.forEach(([, text = ""]) => add(text.trim()));
  else add(rest);
  return { items, columns };
}

function rowsOf(
  { area, headerRows, totalsRows }: Table,
  items: readonly string[],
  { row }: Standing,
): { start: number; end: number } | undefined {
  const data = { start: area.startRow + headerRows, end: area.endRow - totalsRows };
  const parts = (items.length > 0 ? items : ["#data"]).map((item) => {
    if (item === "#all") return { start: area.startRow, end: area.endRow };
    if (item === "#data") return data;
    if (item === "#headers")
      return headerRows > 0 ? { start: area.startRow, end: data.start - 1 } : undefined;
    if (item === "#totals")
      return totalsRows > 0 ? { start: data.end + 1, end: area.endRow } : undefined;
    if (item === "#this row" && row >= data.start && row <= data.end)
      return { start: row, end: row };
    return undefined;
  });
  const found = parts.filter((part) => part !== undefined);
  if (found.length < parts.length) return undefined;
  return {
    start: Math.min(...found.map(({ start }) => start)),
    end: Math.max(...found.map(({ end }) => end)),
  };
}
