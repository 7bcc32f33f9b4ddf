import { shifterOf } from "../../formula/shift";
import { rowsAlike, type Table } from "../../formula/tables";
import type { Book, FormulaCell } from "../book";
import type { DirectFormula } from "./expression";
import { movedDown } from "./movedDown";
import { cellParser } from "./parse";

/**
 * Reads formulas that need no engine, and gives nothing of all others. Most of a log's are one formula filled down, which is
 * taken apart once: the next is the same further down where its text is the first one's, shifted.
 */
export function formulaParser(book: Book): (cell: FormulaCell) => DirectFormula | undefined {
  const parse = cellParser(book);
  const runs = new Map<FormulaCell["sheet"], Map<number, Run>>();

  return (cell) => {
    const { sheet, row, column } = cell;
    const ofSheet = runs.get(sheet) ?? new Map<number, Run>();
    runs.set(sheet, ofSheet);
    const run = ofSheet.get(column);
    if (run && continues(run, cell, book.tables))
      return movedDown(run.formula, row - run.first.row);
    ofSheet.delete(column);
    const formula = parse(cell);
    if (formula && cell.kind === "one cell" && canMove(formula)) {
      ofSheet.set(column, { first: cell, formula });
    }
    return formula;
  };
}

/** A formula that may go on in the rows below. */
interface Run {
  readonly first: FormulaCell;
  readonly formula: DirectFormula;
  /** Its text further down; it is taken apart when it is first asked for. */
  shift?: ReturnType<typeof shifterOf>;
  /** The rows in which its references into tables mean the same. */
  rows?: ReturnType<typeof rowsAlike>;
}

function continues(run: Run, { row, kind, text }: FormulaCell, tables: readonly Table[]): boolean {
  const { first } = run;
  if (kind !== "one cell") return false;
  run.shift ??= shifterOf(first.text);
  if (run.shift(row - first.row, 0) !== text) return false;
  run.rows ??= rowsAlike(tables, first.row);
  return row >= run.rows.from && row < run.rows.before;
}

const canMove = ({ reads }: DirectFormula) => reads.every(({ moves }) => moves !== "in places");
