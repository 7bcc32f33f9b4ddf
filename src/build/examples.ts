import { LocaleType, type IWorkbookData } from "@univerjs/core";
import { implementations } from "../functions/implementations";
import { openWorkbook, type HeadlessWorkbook } from "../hosts/workbook/headless";
import { readMetadata } from "./catalogue";

/** Works one formula in an empty sheet and gives what its cells show. */
export type EvaluateExample = (formula: string) => Promise<string[][]>;

/** Runs `use` with an evaluator that is closed afterwards. */
export async function withEvaluator<T>(use: (evaluate: EvaluateExample) => Promise<T>): Promise<T> {
  const book = await openWorkbook(EMPTY, readMetadata(), implementations);
  try {
    return await use((formula) => evaluateIn(book, formula));
  } finally {
    book.close();
  }
}

const SHEET = "Example";
const ROWS = 60;
const COLUMNS = 26;

const EMPTY: IWorkbookData = {
  id: "examples",
  name: "examples",
  appVersion: "",
  locale: LocaleType.EN_US,
  styles: {},
  sheetOrder: ["example"],
  sheets: { example: { id: "example", name: SHEET, rowCount: ROWS, columnCount: COLUMNS } },
};

async function evaluateIn(book: HeadlessWorkbook, formula: string): Promise<string[][]> {
  await book.write(SHEET, "A1", formula);
  const cell = (row: number, column: number) =>
    book.read(SHEET, `${String.fromCharCode(65 + column)}${row + 1}`);
  let rows = 0;
  let columns = 0;
  const grid = Array.from({ length: ROWS }, (_row, row) =>
    Array.from({ length: COLUMNS }, (_column, column) => {
      const content = cell(row, column);
      if (content !== null && content !== "") {
        rows = Math.max(rows, row + 1);
        columns = Math.max(columns, column + 1);
      }
      return shown(content);
    }),
  );
  await book.write(SHEET, "A1", null);
  return grid.slice(0, rows).map((row) => row.slice(0, columns));
}

/** A number as a cell of ordinary width shows it. */
function shown(content: unknown): string {
  if (content === null || content === undefined) return "";
  return typeof content === "number" ? String(Number(content.toPrecision(6))) : String(content);
}
