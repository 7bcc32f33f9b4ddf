import { argumentsIn, closingOf } from "../../formula/calls";
import { callsOurs } from "../../formula/spelling";
import { tokensOf, type Token } from "../../formula/tokens";
import { implementations } from "../../functions/implementations";
import { lambdas, PREFIX } from "./lambdas";
import { whyFrozen } from "./whyFrozen";

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
    const id = idOf(token.text);
    const given = argumentsIn(tokens.slice(index + 2, end)).map((piece) => rewrite(piece, calls));
    const call = given.includes(undefined) ? undefined : writeCall(id, given as string[], calls);
    if (call === undefined) return undefined;
    text += call;
    index = end;
  }
  return text;
}

/** Why a formula cannot be rewritten. */
export function whyNotRewritten(formula: string): string {
  const tokens = tokensOf(formula);
  const missing = oursIn(tokens).find((id) => !hasClosedForm(id));
  if (missing !== undefined) {
    return `${missing} cannot be written as a formula: ${whyFrozen(missing)}`;
  }
  return tokens.some(({ kind }) => kind === "columns" || kind === "rows")
    ? "it reads whole columns or rows"
    : "it does not give a function the arguments that it takes";
}

/** The functions of ours that a formula calls, by their ids. */
export const oursIn = (tokens: readonly Token[]): string[] =>
  tokens
    .filter(({ kind, text }) => kind === "call" && callsOurs(`${text}(`))
    .map(({ text }) => idOf(text));

const idOf = (call: string) => /[A-Z0-9]+$/i.exec(call)![0].toUpperCase();

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
