import { CellError } from "./error";
import { nthRow } from "./place";

interface BadCell {
  readonly row: number;
  readonly name: string;
  readonly problem: CellError;
}

/** So many bad cells are named; more are only counted. */
const NAMED = 3;

/** The bad cells of columns that are read together. */
export class BadCells {
  private count = 0;
  private first: readonly BadCell[] = [];

  add(row: number, name: string, problem: CellError): void {
    this.count++;
    const [, , third] = this.first;
    if (third && third.row <= row) return;
    this.first = [...this.first, { row, name, problem }]
      .sort((a, b) => a.row - b.row)
      .slice(0, NAMED);
  }

  /** Throws the first, if there is one; of several it says how many, and where the next ones are. */
  expectNone(): void {
    const [first, ...next] = this.first;
    if (!first) return;
    const { code, message } = first.problem;
    if (next.length === 0) throw first.problem;
    const places = next.map(({ row, name }) => `${nthRow(row + 1)} of ${name}`).join(" and ");
    throw new CellError(code, `${message} (${this.count} bad cells in all, next ${places})`);
  }
}
