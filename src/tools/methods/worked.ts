/** Works the steps of a worked example, a line a step. */
import { valueOf } from "./arithmetic";
import { cellsOf, isColumn, isGrid, shownValue, type Value } from "./values";

/** One line as a reader sees it. */
export interface WorkedLine {
  readonly text: string;
  /** Where our own function is held to the arithmetic: what it gives, and what the steps come to. */
  readonly check?: Check;
}

export interface Check {
  readonly formula: string;
  readonly given: Value;
  readonly worked: Value;
  /** How far the two may lie apart, relatively: more where the steps take a sum for an integral. */
  readonly tolerance: number;
}

const EXACT = 1e-9;
const NEARLY = 1e-5;

const STEP = /^([A-Za-z]\w*) = (.+?)(?: {2,}(.+))?$/;
const CHECK = /^(.+?) (==|≈) (.+?)(?: {2,}(.+))?$/;

/**
 * Works the lines of an example in turn. `t = 5 + 2` names a step and shows what it comes to; `SPARE.E1RM(100, 5, 2) == x`
 * holds our function to a step (≈ where a sum stands for an integral). Two spaces and words after either are a remark.
 */
export function workLines(lines: readonly string[]): WorkedLine[] {
  const names = new Map<string, Value>();
  return lines.map((line): WorkedLine => {
    if (line.trim() === "") return { text: "" };
    try {
      const check = CHECK.exec(line);
      if (check) return workCheck(check, names);
      const step = STEP.exec(line);
      if (step) return workStep(step, names);
    } catch (error) {
      throw new Error(`${line}: ${(error as Error).message}`, { cause: error });
    }
    throw new Error(`"${line}" is neither a step nor a check`);
  });
}

function workStep(
  [, name = "", expression = "", remark]: RegExpExecArray,
  names: Map<string, Value>,
) {
  const value = valueOf(expression, names);
  names.set(name, value);
  const comesTo = isLiteral(expression, value) ? "" : ` = ${shownValue(value)}`;
  return { text: `${name} = ${readable(expression)}${comesTo}${remarked(remark)}` };
}

function workCheck(
  [, formula = "", sign, expression = "", remark]: RegExpExecArray,
  names: Map<string, Value>,
) {
  const given = valueOf(formula, names);
  const worked = valueOf(expression, names);
  const equals = sign === "==" ? "=" : "≈";
  const tolerance = sign === "==" ? EXACT : NEARLY;
  const as = isLiteral(expression, worked) ? "" : ` ${equals} ${readable(expression)}`;
  return {
    text: `${readable(formula)} ${equals} ${shownValue(given)}${as}${remarked(remark)}`,
    check: { formula, given, worked, tolerance },
  };
}

const remarked = (remark: string | undefined) => (remark === undefined ? "" : `   (${remark})`);

/** Whether an expression is nothing but its value. */
const isLiteral = (expression: string, value: Value) =>
  isColumn(value) || isGrid(value)
    ? expression.startsWith("{") && !/[+*/^(]/.test(expression)
    : /^(-?[\d.]+|"[^"]*")$/.test(expression);

/** Times as a sign and minus as a long one, outside quotes. */
const readable = (expression: string) =>
  expression.replace(/"[^"]*"|\*|-/g, (found) =>
    found === "*" ? "×" : found === "-" ? "−" : found,
  );

/** Whether what a function gives is what the steps come to. */
export function agrees({ given, worked, tolerance }: Check): boolean {
  const [ours, theirs] = [cellsOf(given), cellsOf(worked)];
  return (
    ours.length === theirs.length &&
    ours.every((cell, i) => {
      const other = theirs[i];
      if (typeof cell !== "number" || typeof other !== "number") return cell === other;
      return Math.abs(cell - other) <= tolerance * Math.max(1e-3, Math.abs(other));
    })
  );
}
