import { liftOver, type Arguments, type Lifted, type Values } from "../cells";
import { answering, toCellError } from "./answer";
import { shownNumber } from "./shownNumber";

/** The arguments of a typed half by name, required and optional ones: cells, as a host or a picture has them. */
export type Given<Required extends string, Optional extends string = never> = Readonly<
  Record<Required, unknown> & Partial<Record<Optional, unknown>>
>;

/**
 * The typed half of a cell function: takes the cells as they are given, by the arguments' names, and returns what
 * the core makes of them, before it is laid out. Whoever wants a result and not its layout (a picture, a test)
 * takes this. Numbers are those a cell shows, and what a cell shows as an error is thrown as that error.
 */
export const typed =
  <Cells extends object, Result>(compute: (cells: Cells) => Result) =>
  (cells: Cells): Result => {
    try {
      return shownResult(compute(cells));
    } catch (error) {
      throw toCellError(error);
    }
  };

/** The typed half of a function that lifts: a result for each position of its inputs. */
export const typedLift =
  <Cells extends object, A extends Arguments, Result>(
    inputsOf: (cells: Cells) => A,
    compute: (values: Values<A>) => Result,
  ) =>
  (cells: Cells): Lifted<Result> =>
    liftOver(
      inputsOf(cells),
      answering((values) => shownResult(compute(values))),
    );

/** A result with every number in it as a cell shows it. */
function shownResult<R>(result: R): R;
function shownResult(result: unknown): unknown {
  if (typeof result === "number") return shownNumber(result);
  if (Array.isArray(result)) return result.map((one) => shownResult<unknown>(one));
  if (typeof result !== "object" || result === null || ArrayBuffer.isView(result)) return result;
  const shown: Record<string, unknown> = { ...result };
  for (const key of Object.keys(shown)) shown[key] = shownResult(shown[key]);
  return shown;
}
