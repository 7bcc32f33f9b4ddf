import { sameTo } from "../../core/statistics/compare";
import { CellError, onlyCell, widthOf, type Grid } from "../../cells";
import { isError, type CellValue } from "../../xlsx/model";
import type {
  Arithmetic,
  CellReference,
  Comparison,
  Expression,
  Operator,
  OurCall,
  WrapperCall,
} from "./expression";
import { COMPARISONS } from "./expression";
import { joined } from "./textOfValue";

/** What an expression's cells hold, and what its calls of ours come to. */
export interface Surroundings {
  /** A cell's value; nothing where no sheet is called so. */
  valueOf(cell: CellReference): CellValue | undefined;
  compute(call: OurCall): Grid;
}

/**
 * Thrown where it is not certain what every spreadsheet makes of values, as of text in a sum: the engine, which is held
 * to one spreadsheet, has the word there.
 */
export class Uncertain extends Error {
  override name = "Uncertain";
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
      if (!isText(operator)) return arithmetic(operator, left, right);
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

function uncertain(): never {
  throw new Uncertain();
}

const known = <T>(value: T | undefined): T => (value === undefined ? uncertain() : value);
/** A blank cell that a function answers with is a blank still, or 0, or "", by what is made of it. */
const notBlank = (value: CellValue): CellValue => (value === null ? uncertain() : value);
/** Whether an operator takes text as it comes. */
const isText = (operator: Operator): operator is Comparison | "&" =>
  operator === "&" || (COMPARISONS as readonly string[]).includes(operator);

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

/** The error among values, if there is one; of two it is not certain which. */
function errorOf(...values: readonly CellValue[]): string | undefined {
  const errors = new Set(values.filter(isError));
  if (errors.size > 1) uncertain();
  const [error] = errors;
  return error;
}

/** A condition, or the error in its place. */
function truth(value: CellValue): boolean | string {
  if (value === null) return false;
  if (typeof value === "string") return isError(value) ? value : uncertain();
  return typeof value === "number" ? value !== 0 : value;
}

function withNumbers(
  one: CellValue,
  other: CellValue,
  compute: (one: number, other: number) => CellValue,
): CellValue {
  const failed = errorOf(one, other);
  const [left, right] = [isError(one) ? 1 : numberOf(one), isError(other) ? 1 : numberOf(other)];
  const isNumbers = left !== "text" && right !== "text";
  if (failed !== undefined) return isNumbers ? failed : uncertain();
  if (isNumbers) return compute(left, right);
  return "#VALUE!";
}

/** A number; "text" for what no spreadsheet takes for one, as the "" of a row that is not filled in. */
function numberOf(value: CellValue): number | "text" {
  if (typeof value === "number") return value;
  if (value === null) return 0;
  return value === "" ? "text" : uncertain();
}

function arithmetic(operator: Arithmetic, one: CellValue, other: CellValue): CellValue {
  // What counts first is told differently: the error or the text above a line, or the zero below it.
  if (operator === "/" && !other && typeof one === "string") return uncertain();
  return withNumbers(one, other, (left, right) => {
    const result = calculated(operator, left, right);
    if (result === undefined) return "#DIV/0!";
    return Number.isFinite(result) ? result : uncertain();
  });
}

function calculated(operator: Arithmetic, left: number, right: number): number | undefined {
  switch (operator) {
    case "+":
      return withDigits(left + right, left);
    case "-":
      return withDigits(left - right, left);
    case "*":
      return left * right;
    case "/":
      return right === 0 ? undefined : left / right;
    case "^":
      return left > 0 ? left ** right : uncertain();
  }
}

/** Where two numbers all but cancel out, programs differ over what is left. */
const withDigits = (result: number, from: number) =>
  result === 0 || Math.abs(result) > 1e-5 * Math.abs(from) ? result : uncertain();

function compare(operator: Comparison, one: CellValue, other: CellValue): boolean {
  switch (operator) {
    case "=":
      return isEqual(one, other);
    case "<>":
      return !isEqual(one, other);
    default:
      break;
  }
  const [left, right] = [one ?? 0, other ?? 0];
  if (typeof left !== "number" || typeof right !== "number") return uncertain();
  const isSame = isEqual(left, right);
  if (isSame) return operator === "<=" || operator === ">=";
  return operator.startsWith("<") ? left < right : left > right;
}

/** Whether cells show the same; a blank one is as much 0 as "". */
function isEqual(one: CellValue, other: CellValue): boolean {
  if (one === null) return other === null || isEqual(typeof other === "number" ? 0 : "", other);
  if (other === null) return isEqual(other, one);
  if (typeof one === "number" && typeof other === "number") {
    if (one !== other && sameTo(one, other)) uncertain();
    return one === other;
  }
  if (typeof one === "string" && typeof other === "string") {
    if (one !== "" && other !== "" && !(isPlain(one) && isPlain(other))) uncertain();
    return one.toLowerCase() === other.toLowerCase();
  }
  if (typeof one !== "boolean" && typeof other !== "boolean") return false;
  // A truth value is no text, but to some programs it is a number.
  return one === "" || other === "" ? false : uncertain();
}

/** Text that no program takes for a pattern, and writes large and small alike. */
const isPlain = (text: string) => /^[\x20-\x7e]*$/.test(text) && !/[*?~]/.test(text);

/** Half away from zero, as the digits say that a cell shows. */
function round(value: number, digits: number): CellValue {
  if (!Number.isInteger(digits) || digits < 0 || digits > 9) return uncertain();
  const scale = 10 ** digits;
  const rounded = nearest(Math.abs(value) * scale) / scale;
  return value < 0 && rounded !== 0 ? -rounded : rounded;
}

function roundToMultiple(value: number, multiple: number): CellValue {
  if (!(value >= 0 && multiple > 0)) return uncertain();
  const count = value / multiple;
  return isHalf(count) ? uncertain() : Math.round(count) * multiple;
}

/** What is a half to nine digits, but not quite, goes either way. */
function nearest(size: number): number {
  if (size > 1e14 || (isHalf(size) && size % 1 !== 0.5)) return uncertain();
  return Math.floor(size + 0.5);
}

const isHalf = (size: number) => Math.abs((size % 1) - 0.5) <= 1e-9 * Math.max(1, size);

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
