import type { Grid } from "../cells";
import { CellError } from "../cells";

/** One cell of one open workbook; rows and columns count from 0. */
export interface Place {
  readonly unitId: string;
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

/**
 * What our functions say about the errors they return. A cell has room for the error's code only,
 * so the message is kept here, by the cell that holds the formula, until somebody asks for it.
 */
export interface Messages {
  /** From here on, a formula that is computed again replaces what it said before. */
  startCalculation(): void;
  /** Keeps the errors in the result of one call made by the formula at `place`. */
  record(place: Place, result: Grid): void;
  /**
   * Why the formula at `place` shows the error `code`, in its own cell or in the cell of its spill
   * that lies `down` and `right` of it. Where a formula wraps our function in others, the error may
   * come from another position of our result.
   */
  find(place: Place, code: string, down?: number, right?: number): string | undefined;
}

/** Of the spreadsheet's own error for a result that finds no room, which has no message of its own. */
export const NO_ROOM = "the result needs more cells than this one, and some of those are not empty";

/**
 * Why a formula shows the error `code`, of what the calls of ours in it came to: in the same position first, and
 * else the first one with that code.
 */
export function messageIn(
  results: readonly Grid[],
  code: string,
  down = 0,
  right = 0,
): string | undefined {
  const samePosition = results.map((result) => result[down]?.[right]);
  const errors = [...samePosition, ...results.flat(2)].filter(isError);
  return errors.find((error) => error.code === code)?.message;
}

export function createMessages(): Messages {
  let calculation = 0;
  const said = new Map<string, { calculation: number; results: Grid[] }>();

  return {
    startCalculation() {
      calculation++;
    },

    record(place, result) {
      const key = keyOf(place);
      const before = said.get(key);
      const results = before?.calculation === calculation ? before.results : [];
      if (result.some((row) => row.some(isError))) results.push(result);
      if (results.length > 0) said.set(key, { calculation, results });
      else said.delete(key);
    },

    find(place, code, down = 0, right = 0) {
      return messageIn(said.get(keyOf(place))?.results ?? [], code, down, right);
    },
  };
}

function isError(value: unknown): value is CellError {
  return value instanceof CellError;
}

function keyOf({ unitId, sheetId, row, column }: Place): string {
  return [unitId, sheetId, row, column].join("/");
}
