import { cellAddress } from "../formula/address";
import { implementations } from "../functions/implementations";
import { openContents, type HeadlessWorkbook } from "../engine/headless";
import { readMetadata } from "./catalogue";

/** What the cells of a worked formula show, a row a row. */
export type Shown = readonly (readonly string[])[];

const ROWS = 60;
const COLUMNS = 26;

/** Works formulas in the spreadsheet engine, each alone in a sheet of its own, and gives what they show. */
export async function workExamples(formulas: readonly string[]): Promise<Map<string, Shown>> {
  const examples = formulas.map((formula, index) => ({ formula, name: `Example ${index + 1}` }));
  const sheets = Object.fromEntries(examples.map(({ formula, name }) => [name, [[formula]]]));
  const book = await openContents(sheets, {}, readMetadata(), implementations);
  try {
    return new Map(examples.map(({ formula, name }) => [formula, shownIn(book, name)]));
  } finally {
    book.close();
  }
}

/** The filled corner of a sheet. */
function shownIn(book: HeadlessWorkbook, sheet: string): Shown {
  let rows = 0;
  let columns = 0;
  const grid = Array.from({ length: ROWS }, (_row, row) =>
    Array.from({ length: COLUMNS }, (_column, column) => {
      const text = textOf(book.read(sheet, cellAddress(row, column)));
      if (text !== "") {
        rows = Math.max(rows, row + 1);
        columns = Math.max(columns, column + 1);
      }
      return text;
    }),
  );
  return grid.slice(0, rows).map((row) => row.slice(0, columns));
}

/** A number as a cell of ordinary width shows it. */
function textOf(content: unknown): string {
  if (content === null || content === undefined) return "";
  return typeof content === "number" ? String(Number(content.toPrecision(6))) : String(content);
}
