import type { ICellData, IWorkbookData, IWorksheetData } from "@univerjs/core";
import { CellValueType, LocaleType } from "@univerjs/core";
import { cellAddress, parseCell } from "../formula/address";
import { tokensOf } from "../formula/tokens";
import type { Book, BookSheet, CellValue, FormulaCell } from "../recalculate/book";
import { cellsOf } from "../recalculate/cells";
import { engineFormula } from "../recalculate/engineFormula";

/** What the engine is to see otherwise than the file says it. */
export interface Adjustments {
  /** Formulas that keep their saved value, which stands there as if it had been typed. */
  readonly left: ReadonlyMap<FormulaCell, string>;
  /** Formulas whose result is to be cut to the cells they fill. */
  readonly cut: ReadonlySet<FormulaCell>;
  /** What stands in those cells of an array that its result does not reach. */
  readonly beyond: ReadonlyMap<FormulaCell, ReadonlyMap<string, CellValue>>;
}

/** Room for results that spill beyond what the sheet holds. */
const room = { rows: 600, columns: 60 };

/** A workbook's values and formulas as the engine takes them: no styles, no sizes. */
export function engineData(book: Book, adjustments: Adjustments): IWorkbookData {
  const bySheet = new Map<BookSheet, FormulaCell[]>(book.sheets.map((sheet) => [sheet, []]));
  for (const cell of book.formulas) bySheet.get(cell.sheet)?.push(cell);
  const size = sizeOf(book);
  const sheets = [...bySheet].map(([sheet, formulas]): Partial<IWorksheetData> => {
    const { id, name } = sheet;
    return { id, name, ...size, cellData: cellsFor(book, sheet, formulas, adjustments) };
  });
  return {
    id: "book",
    name: "",
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: book.sheets.map(({ id }) => id),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
    resources: book.openNames,
  };
}

function cellsFor(
  book: Book,
  sheet: BookSheet,
  formulas: readonly FormulaCell[],
  { left, cut, beyond }: Adjustments,
): Record<number, Record<number, ICellData>> {
  const data: Record<number, Record<number, ICellData>> = {};
  const put = (row: number, column: number, cell: ICellData | undefined) => {
    if (cell) (data[row] ??= {})[column] = cell;
    else delete data[row]?.[column];
  };

  for (const cell of sheet.cells.values()) {
    put(cell.row, cell.column, contentOf(book.valueOf(cell)));
  }
  for (const formula of formulas) {
    if (left.has(formula)) continue;
    // What an array fills is its result, and not in its way.
    for (const { row, column } of cellsOf(formula.area)) {
      const there = sheet.cells.get(cellAddress(row, column));
      if (!there?.formula) put(row, column, undefined);
    }
  }
  for (const formula of formulas) {
    if (left.has(formula)) continue;
    const { row, column, text } = formula;
    const f = engineFormula(text, book, { sheet: sheet.name, row, column });
    put(row, column, { f: cut.has(formula) ? cutTo(f, formula) : f });
    for (const [address, value] of beyond.get(formula) ?? []) {
      const at = parseCell(address)!;
      put(at.row, at.column, contentOf(value));
    }
  }
  return data;
}

/** The formula's result, as much of it as the cells it fills have room for. */
function cutTo(formula: string, { area }: FormulaCell): string {
  const rows = area.endRow - area.startRow + 1;
  const columns = area.endColumn - area.startColumn + 1;
  return `=TAKE(${formula.slice(1)},${rows},${columns})`;
}

function contentOf(value: CellValue): ICellData | undefined {
  if (value === null) return undefined;
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: value, t: typeof value === "number" ? CellValueType.NUMBER : CellValueType.STRING };
}

/** Sheets as large as what they hold and what the formulas read, with room to spill. */
function sizeOf({ sheets, formulas }: Book): { rowCount: number; columnCount: number } {
  let row = 0;
  let column = 0;
  const reach = (at: { row: number; column: number }) => {
    row = Math.max(row, at.row);
    column = Math.max(column, at.column);
  };
  for (const sheet of sheets) for (const cell of sheet.cells.values()) reach(cell);
  for (const { area, text } of formulas) {
    reach({ row: area.endRow, column: area.endColumn });
    for (const token of tokensOf(text)) {
      const at = token.kind === "cell" ? parseCell(token.text) : undefined;
      if (at) reach(at);
    }
  }
  return { rowCount: row + room.rows, columnCount: column + room.columns };
}
