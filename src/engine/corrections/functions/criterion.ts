import { numberIn } from "./numbers";
import { Fault, type Plain } from "./plain";
import { hasWildcards, wildcardPattern } from "./wildcards";

type Operator = "=" | "<>" | "<" | "<=" | ">" | ">=";

/** What cells are counted by, read once: `">=100"`, `"A*"`, 0, `"<>"`. */
export interface Criterion {
  meets(cell: Plain): boolean;
  /** Where exactly the cells that are equal to one value meet it, the key of that value. */
  readonly key?: string;
}

/**
 * Reads a criterion as COUNTIF and its relatives do.
 *
 * A number, also one spelled as text, is met by cells of that number and by text that spells it. Text
 * is met whatever its case, and `*`, `?` and `~` mean what they do elsewhere. `"="` is met by blank
 * cells alone, `""` by empty text as well, and `"<>"` by all that is not blank. A blank criterion is 0.
 */
export function readCriterion(given: Plain): Criterion {
  if (typeof given !== "string") return equality(given ?? 0);
  const [, operator = "=", rest = ""] = /^(<>|<=|>=|=|<|>)?([^]*)$/.exec(given)!;
  const isBare = rest === given;
  if (rest === "") {
    if (isBare) return { meets: (cell) => cell === null || cell === "" };
    if (operator === "=") return { meets: (cell) => cell === null };
    if (operator === "<>") return { meets: (cell) => cell !== null };
    return { meets: () => false };
  }
  const operand = readOperand(rest);
  if (operator === "=") return equality(operand);
  if (operator === "<>") {
    const { meets } = equality(operand);
    return { meets: (cell) => !meets(cell) };
  }
  return { meets: (cell) => inOrder(cell, operator as Operator, operand) };
}

const CODES = /^#(?:N\/A|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|NULL!|SPILL!|CALC!)$/i;

function readOperand(text: string): Plain {
  if (/^(?:true|false)$/i.test(text)) return text.toLowerCase() === "true";
  if (CODES.test(text)) return new Fault(text.toUpperCase() as Fault["code"]);
  return numberIn(text) ?? text;
}

function equality(operand: Plain): Criterion {
  if (typeof operand === "string" && hasWildcards(operand)) {
    const pattern = wildcardPattern(operand, "whole");
    return { meets: (cell) => typeof cell === "string" && pattern.test(cell) };
  }
  const key = keyOf(operand);
  return { key, meets: (cell) => keyOf(cell) === key };
}

/** Cells with the same key are the same to a criterion. A blank cell is like no other. */
export function keyOf(cell: Plain): string {
  if (cell === null) return "blank";
  if (cell instanceof Fault) return `error ${cell.code}`;
  if (typeof cell === "boolean") return `is ${cell}`;
  if (typeof cell === "number") return `number ${cell}`;
  // Most text spells no number, and reading every text as one is slow.
  const number = /\d/.test(cell) ? numberIn(cell) : undefined;
  return number === undefined ? `text ${cell.toLowerCase()}` : `number ${number}`;
}

function inOrder(cell: Plain, operator: Operator, operand: Plain): boolean {
  if (typeof cell !== typeof operand || cell instanceof Fault || cell === null) return false;
  const [one, other] =
    typeof cell === "string"
      ? [cell.toLowerCase(), String(operand).toLowerCase()]
      : [cell, operand!];
  if (operator === "<") return one < other;
  if (operator === "<=") return one <= other;
  return operator === ">" ? one > other : one >= other;
}
