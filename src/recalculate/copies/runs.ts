import { cellAddress } from "../../formula/address";
import { fromFile } from "../../formula/future";
import { shiftFormula } from "../../formula/shift";
import type { FormulaCell } from "../book";

/** A formula, and how many cells down it was filled. */
interface Run {
  readonly first: FormulaCell;
  last: FormulaCell;
}

/** The notes that keep formulas: one for a run of cells that a formula was filled down, on the first of them. */
export function notesOn(cells: readonly FormulaCell[]): Map<string, string> {
  const runs: Run[] = [];
  const inColumns = [...cells].sort((a, b) => a.column - b.column || a.row - b.row);
  for (const cell of inColumns) {
    const run = runs.at(-1);
    if (run && continues(run, cell)) run.last = cell;
    else runs.push({ first: cell, last: cell });
  }
  return new Map(
    runs.map(({ first, last }) => {
      const formula = `=${fromFile(first.text)}`;
      const end = cellAddress(last.row, last.column);
      const note = first === last ? formula : `${formula}\nand so on, filled down to ${end}`;
      return [cellAddress(first.row, first.column), note];
    }),
  );
}

function continues({ first, last }: Run, { row, column, text, kind }: FormulaCell): boolean {
  return (
    column === last.column &&
    row === last.row + 1 &&
    kind === "one cell" &&
    first.kind === "one cell" &&
    shiftFormula(first.text, row - first.row, 0) === text
  );
}
