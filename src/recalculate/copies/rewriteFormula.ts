import { argumentsIn, closingOf } from "../../formula/calls";
import { callsOurs } from "../../formula/spelling";
import { tokensOf, type Token } from "../../formula/tokens";
import { implementations } from "../../functions/implementations";
import { lambdas, PREFIX } from "./lambdas";

/** A formula that calculates without the add-in, and the functions it calls for that. */
export interface Rewritten {
  readonly text: string;
  readonly calls: ReadonlySet<string>;
}

/**
 * Rewrites a formula's calls of our functions as calls of the copy's own; nothing where one of them
 * has no closed form, or reads whole columns or rows, a million cells to a LAMBDA.
 */
export function rewriteFormula(formula: string): Rewritten | undefined {
  const tokens = tokensOf(formula);
  if (tokens.some(({ kind }) => kind === "columns" || kind === "rows")) return undefined;
  const calls = new Set<string>();
  const text = rewrite(tokens, calls);
  return text === undefined ? undefined : { text, calls };
}

function rewrite(tokens: readonly Token[], calls: Set<string>): string | undefined {
  const texts = tokens.map(({ text }) => text);
  let text = "";
  let index = 0;
  for (let token = tokens[index]; token; token = tokens[++index]) {
    if (token.kind !== "call" || !callsOurs(`${token.text}(`)) {
      text += token.text;
      continue;
    }
    const end = closingOf(texts, index + 1) ?? tokens.length;
    const id = /[A-Z0-9]+$/i.exec(token.text)![0].toUpperCase();
    const given = argumentsIn(tokens.slice(index + 2, end)).map((piece) => rewrite(piece, calls));
    const call = given.includes(undefined) ? undefined : writeCall(id, given as string[], calls);
    if (call === undefined) return undefined;
    text += call;
    index = end;
  }
  return text;
}

/** Whether a copy can do one of the add-in's functions without the add-in. */
export const hasClosedForm = (id: string) => id in implementations && lambdas.has(id);

/** A call with all its arguments: what was left out is written as what it stands for. */
function writeCall(id: string, given: readonly string[], calls: Set<string>): string | undefined {
  if (!hasClosedForm(id)) return undefined;
  const whole = id === "RESERVETAPER" && (given[3] ?? "").trim() === "";
  const name = whole ? "RESERVEWEEKS" : id;
  const values = whole ? given.filter((_, index) => index !== 3) : given;
  const { parameters } = lambdas.get(name)!;
  if (values.length > parameters.length) return undefined;
  const written = parameters.map(({ omitted }, index) => {
    const value = values[index] ?? "";
    return value.trim() === "" ? omitted : value;
  });
  if (written.includes(undefined)) return undefined;
  calls.add(name);
  return `${PREFIX}${name}(${written.join(",")})`;
}
