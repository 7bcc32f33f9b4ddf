import type { Area } from "../../formula/address";
import type { FormulaCell } from "../book";

/** Finds formulas by the cells they fill. */
export interface Fills {
  /** The formulas that fill a cell of this area of the sheet; one that fills several may come more than once. */
  in(sheet: string, area: Area): readonly FormulaCell[];
}

/** A row of a column, and the formula that fills it. */
interface Fill {
  readonly row: number;
  readonly formula: FormulaCell;
}

/** What formulas fill, or are said to. */
export function indexFills(
  formulas: Iterable<FormulaCell>,
  areaOf: (cell: FormulaCell) => Area = ({ area }) => area,
): Fills {
  const sheets = new Map<string, Map<number, Fill[]>>();
  for (const formula of formulas) {
    const { startRow, startColumn, endRow, endColumn } = areaOf(formula);
    const columns = sheets.get(formula.sheet.name) ?? new Map<number, Fill[]>();
    sheets.set(formula.sheet.name, columns);
    for (let column = startColumn; column <= endColumn; column++) {
      const filled = columns.get(column) ?? [];
      columns.set(column, filled);
      for (let row = startRow; row <= endRow; row++) filled.push({ row, formula });
    }
  }
  for (const columns of sheets.values()) {
    for (const filled of columns.values()) filled.sort((one, other) => one.row - other.row);
  }

  return {
    in(sheet, { startRow, startColumn, endRow, endColumn }) {
      const columns = sheets.get(sheet);
      if (!columns) return none;
      let found: FormulaCell[] | undefined;
      const add = (filled: readonly Fill[]) => {
        let at = firstFrom(filled, startRow);
        for (let fill = filled[at]; fill && fill.row <= endRow; fill = filled[++at]) {
          (found ??= []).push(fill.formula);
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

/** The first place in a column in order that is in this row or further down. */
function firstFrom(filled: readonly Fill[], row: number): number {
  let low = 0;
  let high = filled.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const fill = filled[middle];
    if (fill && fill.row < row) low = middle + 1;
    else high = middle;
  }
  return low;
}
