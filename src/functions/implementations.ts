import { CellError, notAvailable, single, type Content, type Grid } from "../cells";
import { toCellError } from "./answer";
import * as functions from "./index";
import { shownNumber } from "./shownNumber";

/** A cell function as a host calls it: arguments as they come, a grid of contents back, and never an exception. */
export type Implementation = (...args: unknown[]) => Grid;

/** Functions by their ids. */
export type Implementations = Readonly<Record<string, Implementation>>;

/** The ids that there are, which the names of the cell functions tell. */
type Id = Uppercase<keyof typeof functions>;

/**
 * Every cell function by its id, which is its name in upper case: `e1rmBand` is E1RMBAND. Cell functions are what
 * the families' indexes name; a file's typed half and its helpers stay behind them.
 */
export const implementations = Object.fromEntries(
  Object.entries<CellFunction>(functions).map(([name, compute]) => [
    name.toUpperCase(),
    guarded(compute),
  ]),
) as Implementations & Readonly<Record<Id, Implementation>>;

/** A cell function as its family has it: whatever its arguments are said to be, it reads what comes. */
type CellFunction = (...args: never[]) => unknown[][];

/**
 * The last line: whatever happens inside, a cell shows a number, a text or an error with a message. Hosts may add
 * an argument of their own at the end (Excel's invocation), which is cut off.
 */
function guarded(compute: CellFunction): Implementation {
  return (...args) => {
    try {
      return compute(...(args.slice(0, compute.length) as never[])).map((row) =>
        row.map(presentable),
      );
    } catch (error) {
      return single(toCellError(error));
    }
  };
}

/** No NaN, no infinity, no minus zero, and no digits past the 15 that a cell can show. */
function presentable(content: unknown): Content {
  if (typeof content === "number") {
    if (Number.isFinite(content)) return shownNumber(content);
    return notAvailable("there is no finite result for these numbers");
  }
  return typeof content === "string" || content instanceof CellError ? content : "";
}
