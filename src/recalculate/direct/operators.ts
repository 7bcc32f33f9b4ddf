import { sameTo } from "../../core/statistics/compare";
import { isError, type CellValue } from "../../xlsx/model";
import type { Arithmetic, Comparison, Operator } from "./expression";
import { COMPARISONS } from "./expression";

/*
 * What operators make of two values, and conditions of one, where every spreadsheet makes the same of them.
 */

/**
 * Thrown where it is not certain what every spreadsheet makes of values, as of text in a sum: the engine, which is held
 * to one spreadsheet, has the word there.
 */
export class Uncertain extends Error {
  override name = "Uncertain";
}

/** Gives the word to the engine. */
export function uncertain(): never {
  throw new Uncertain();
}

/** Whether an operator takes text as it comes. */
export const takesText = (operator: Operator): operator is Comparison | "&" =>
  operator === "&" || (COMPARISONS as readonly string[]).includes(operator);

/** The error among values, if there is one; of two it is not certain which. */
export function errorOf(...values: readonly CellValue[]): string | undefined {
  const errors = new Set(values.filter(isError));
  if (errors.size > 1) uncertain();
  const [error] = errors;
  return error;
}

/** A condition, or the error in its place. */
export function truth(value: CellValue): boolean | string {
  if (value === null) return false;
  if (typeof value === "string") return isError(value) ? value : uncertain();
  return typeof value === "number" ? value !== 0 : value;
}

/** What is computed of two numbers, or the error that is among them; text that is no number is `#VALUE!`. */
export function withNumbers(
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

/** What a sign of arithmetic makes of two values. */
export function arithmetic(operator: Arithmetic, one: CellValue, other: CellValue): CellValue {
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

/** Whether two values compare so. */
export function compare(operator: Comparison, one: CellValue, other: CellValue): boolean {
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

/** Whether cells show the same; a blank one is as much 0 as FALSE or "". */
function isEqual(one: CellValue, other: CellValue): boolean {
  if (one === null && typeof other === "boolean") return !other;
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
