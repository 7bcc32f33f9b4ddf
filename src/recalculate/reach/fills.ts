import type { Area } from "../../formula/address";
import type { FormulaCell } from "../book";

/** Finds formulas by the cells they fill. */
export interface Fills {
  /** The formulas that fill a cell of this area of the sheet; one that fills several may come more than once. */
  in(sheet: string, area: Area): readonly FormulaCell[];
}

/** The rows of one column that formulas fill, in their order, and the formula of each. */
interface FilledColumn {
  readonly rows: number[];
  readonly formulas: FormulaCell[];
}

/** What formulas fill, or are said to. */
export function indexFills(
  formulas: Iterable<FormulaCell>,
  areaOf: (cell: FormulaCell) => Area = ({ area }) => area,
): Fills {
  const sheets = new Map<string, Map<number, FilledColumn>>();
  for (const formula of formulas) {
    const { startRow, startColumn, endRow, endColumn } = areaOf(formula);
    const columns = sheets.get(formula.sheet.name) ?? new Map<number, FilledColumn>();
    sheets.set(formula.sheet.name, columns);
    for (let column = startColumn; column <= endColumn; column++) {
      const filled = columns.get(column) ?? { rows: [], formulas: [] };
      columns.set(column, filled);
      for (let row = startRow; row <= endRow; row++) {
        filled.rows.push(row);
        filled.formulas.push(formula);
      }
    }
  }
  for (const columns of sheets.values()) {
    for (const [column, filled] of columns) columns.set(column, inOrder(filled));
  }

  return {
    in(sheet, { startRow, startColumn, endRow, endColumn }) {
      const columns = sheets.get(sheet);
      if (!columns) return none;
      let found: FormulaCell[] | undefined;
      const add = ({ rows, formulas }: FilledColumn) => {
        for (let at = firstFrom(rows, startRow); at < rows.length && rows[at] <= endRow; at++) {
          (found ??= []).push(formulas[at]);
        }
      };
      if (endColumn - startColumn < columns.size) {
        for (let column = startColumn; column <= endColumn; column++) {
          const filled = columns.get(column);
          if (filled) add(filled);
        }
      } else {
        for (const [column, filled] of columns) {
          if (column >= startColumn && column <= endColumn) add(filled);
        }
      }
      return found ?? none;
    },
  };
}

const none: readonly FormulaCell[] = [];

function inOrder({ rows, formulas }: FilledColumn): FilledColumn {
  if (rows.every((row, at) => at === 0 || rows[at - 1] <= row)) return { rows, formulas };
  const order = rows.map((_, at) => at).sort((one, other) => rows[one] - rows[other]);
  return { rows: order.map((at) => rows[at]), formulas: order.map((at) => formulas[at]) };
}

/** The first place in a list of rising numbers that holds this one or a larger one. */
function firstFrom(numbers: readonly number[], least: number): number {
  let low = 0;
  let high = numbers.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (numbers[middle] < least) low = middle + 1;
    else high = middle;
  }
  return low;
}
