import type { Token } from "./tokens";
import { tokensOf } from "./tokens";

/** Where the bracket that opens at `open` is closed, in a formula's pieces; nothing where it is not. */
export function closingOf(texts: readonly string[], open: number): number | undefined {
  let depth = 0;
  for (let index = open; index < texts.length; index++) {
    if (texts[index] === "(") depth++;
    if (texts[index] === ")") depth--;
    if (depth === 0) return index;
  }
  return undefined;
}

/** What stands between a call's brackets, split at the commas that part its arguments. */
export function argumentsIn(inside: readonly Token[]): Token[][] {
  let last: Token[] = [];
  const found = [last];
  let depth = 0;
  for (const token of inside) {
    if (token.text === "(" || token.text === "{") depth++;
    if (token.text === ")" || token.text === "}") depth--;
    if (token.text === "," && depth === 0) {
      last = [];
      found.push(last);
    } else last.push(token);
  }
  return found;
}

/** The same of text: commas inside texts, brackets and braces part nothing. */
export function splitArguments(inside: string): string[] {
  return argumentsIn(tokensOf(inside)).map((tokens) => tokens.map(({ text }) => text).join(""));
}
