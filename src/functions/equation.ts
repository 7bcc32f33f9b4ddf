import {
  CellError,
  chosen,
  HostError,
  invalid,
  matchWord,
  numberInText,
  readChoice,
  shortNumber,
  type Argument,
  type CellValue,
} from "../cells";
import { equations, ownCurve, type Equation } from "../core/strength/equations";
import { EquationChoice } from "./choices";

/** An `equation` argument: a published equation's name, or the lifter's own curve constant. */
export const equationOf = (equation: unknown): Argument<Equation> =>
  chosen(equation, "equation", readEquation);

/** The word for all published equations at once. */
export const ALL_EQUATIONS = "all";

/** As `equationOf`, where all published equations may be asked for at once. */
export const equationOrAll = (equation: unknown): Argument<Equation | typeof ALL_EQUATIONS> =>
  chosen(equation, "equation", (value) => {
    if (typeof value === "string" && matchWord(value, [ALL_EQUATIONS])) return ALL_EQUATIONS;
    const read = readEquation(value);
    return read instanceof CellError && !(value instanceof HostError)
      ? invalid(`${read.message}, or "${ALL_EQUATIONS}"`)
      : read;
  });

function readEquation(value: CellValue): Equation | CellError {
  const constant = constantIn(value);
  if (constant !== undefined && constant !== 0) {
    return constant > 0
      ? ownCurve(constant)
      : invalid(
          `equation is ${shortNumber(constant)}; expected an equation's name or a constant above 0`,
        );
  }
  const name = readChoice(constant === 0 ? null : value, "equation", EquationChoice);
  if (!(name instanceof CellError)) return equations[name ?? EquationChoice.epley];
  return value instanceof HostError
    ? name
    : invalid(`${name.message}, or the lifter's own constant above 0`);
}

function constantIn(value: CellValue): number | undefined {
  return typeof value === "string"
    ? numberInText(value)
    : typeof value === "number"
      ? value
      : undefined;
}
