/** The errors a function may put in a cell. Only the first two show a message in Excel. */
export type ErrorCode = "#VALUE!" | "#N/A" | "#DIV/0!" | "#NUM!" | "#NULL!";

/** An error in a cell of ours, on its way to the host. Thrown, it is the result of the whole call. */
export class CellError {
  constructor(
    readonly code: ErrorCode,
    readonly message: string,
  ) {}

  /** The same error, its message led by the place it is in ("the 7th row: …"). */
  at(place: string): CellError {
    return place === "" ? this : new CellError(this.code, `${place}: ${this.message}`);
  }

  /** The same error of a message that begins with an argument, in a place of that ("the 7th row of load is …"). */
  of(place: string): CellError {
    return place === "" ? this : new CellError(this.code, `${place} of ${this.message}`);
  }
}

/** Bad input: the message names the argument and says what was expected. */
export const invalid = (message: string) => new CellError("#VALUE!", message);

/** Not enough data, or no solution: the message is the reason. */
export const notAvailable = (message: string) => new CellError("#N/A", message);
