import { CellError, onlyCell, widthOf, type Grid } from "../../cells";
import { isError, type CellValue } from "../../xlsx/model";
import type { CellReference, Expression, OurCall, WrapperCall } from "./expression";
import {
  arithmetic,
  compare,
  errorOf,
  takesText,
  truth,
  uncertain,
  withNumbers,
} from "./operators";
import { round, roundToMultiple } from "./rounding";
import { joined } from "./textOfValue";

/** What an expression's cells hold, and what its calls of ours come to. */
export interface Surroundings {
  /** A cell's value; nothing where no sheet is called so. */
  valueOf(cell: CellReference): CellValue | undefined;
  compute(call: OurCall): Grid;
}

/** What an expression comes to, one value; of a blank cell nothing. Throws `Uncertain`. */
export function evaluate(expression: Expression, around: Surroundings): CellValue {
  switch (expression.kind) {
    case "value":
      return expression.value;
    case "cell":
      return known(around.valueOf(expression));
    case "ours":
      return onlyValue(around.compute(expression));
    case "negative":
      return arithmetic("*", -1, evaluate(expression.of, around));
    case "percent":
      return arithmetic("/", evaluate(expression.of, around), 100);
    case "operator": {
      const { operator } = expression;
      const left = evaluate(expression.left, around);
      const right = evaluate(expression.right, around);
      if (!takesText(operator)) return arithmetic(operator, left, right);
      const failed = errorOf(left, right);
      if (failed !== undefined) return failed;
      return operator === "&"
        ? (joined(left, right) ?? uncertain())
        : compare(operator, left, right);
    }
    case "wrapper":
      return wrap(expression, around);
  }
}

function wrap({ name, given }: WrapperCall, around: Surroundings): CellValue {
  // As many as it takes were given, or it would not have been read.
  const value = (place: number) => evaluate(given[place]!, around);
  switch (name) {
    case "IF": {
      const condition = truth(value(0));
      if (typeof condition === "string") return condition;
      if (condition) return notBlank(value(1));
      return given.length > 2 ? notBlank(value(2)) : false;
    }
    case "IFERROR": {
      const tried = notBlank(value(0));
      return isError(tried) ? notBlank(value(1)) : tried;
    }
    case "IFNA": {
      const [tried, otherwise] = [notBlank(value(0)), notBlank(value(1))];
      if (tried === "#N/A") return otherwise;
      // The engine answers with an error in the other value, whether it is asked for that or not.
      return isError(otherwise) ? uncertain() : tried;
    }
    case "AND":
    case "OR": {
      const truths = given.map((_, place) => truth(notBlank(value(place))));
      const failed = errorOf(...truths);
      if (failed !== undefined) return failed;
      return name === "AND" ? truths.every(Boolean) : truths.some(Boolean);
    }
    case "NOT": {
      const condition = truth(notBlank(value(0)));
      return typeof condition === "string" ? condition : !condition;
    }
    case "ISBLANK":
      return value(0) === null;
    case "ISNUMBER":
      return typeof value(0) === "number";
    case "ISTEXT": {
      const tested = value(0);
      return typeof tested === "string" && !isError(tested);
    }
    case "ISERROR":
      return isError(value(0));
    case "ISNA":
      return value(0) === "#N/A";
    case "ROUND":
      return withNumbers(value(0), value(1), round);
    case "MROUND": {
      const [rounded, multiple] = [value(0), value(1)];
      // The engine takes the "" of a row that is not filled in for 0.
      if (rounded === "" || multiple === "") return uncertain();
      return withNumbers(rounded, multiple, roundToMultiple);
    }
    case "INDEX":
      return pick(
        given[0]!,
        given.slice(1).map((_, index) => value(index + 1)),
        around,
      );
  }
}

const known = <T>(value: T | undefined): T => (value === undefined ? uncertain() : value);
/** A blank cell that a function answers with is a blank still, or 0, or "", by what is made of it. */
const notBlank = (value: CellValue): CellValue => (value === null ? uncertain() : value);
/** Several cells are taken in ways of their own. */
function onlyValue(grid: Grid): CellValue {
  return contentOf(known(onlyCell(grid)));
}

/** What a cell shows of what one of our functions puts in it. */
export const contentOf = (content: Grid[number][number]): CellValue =>
  content instanceof CellError ? content.code : content;

/** What the cells of a result show; a row without errors is as it is, and need not be made again. */
export const contentsOf = (grid: Grid): readonly (readonly CellValue[])[] =>
  grid.map((row) =>
    row.some((content) => content instanceof CellError)
      ? row.map(contentOf)
      : (row as (number | string)[]),
  );

/** One cell of what a call of ours comes to, `INDEX(SPARE.E1RMBAND(…),1,2)`. */
function pick(from: Expression, indexes: readonly CellValue[], around: Surroundings): CellValue {
  if (from.kind !== "ours") return uncertain();
  const places = indexes.map((index) =>
    typeof index === "number" && Number.isInteger(index) && index > 0 ? index - 1 : uncertain(),
  );
  const grid = around.compute(from);
  const cells = grid.flat();
  if (cells.length === 1) return uncertain();
  const [first = 0, second] = places;
  const isLine = grid.length === 1 || widthOf(grid) === 1;
  const inLine = isLine ? cells[first] : undefined;
  const content = second === undefined ? inLine : grid[first]?.[second];
  return content === undefined ? uncertain() : contentOf(content);
}
