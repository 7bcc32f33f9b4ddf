import type { Area } from "./address";
import { parseArea } from "./address";
import { argumentsIn, closingOf } from "./calls";
import { tokensOf } from "./tokens";

/** Functions that ask where cells are, and not what they hold. */
const MEASURES: ReadonlySet<string> = new Set(["ROW", "ROWS", "COLUMN", "COLUMNS"]);

/** What a formula without such a call does not have, found sooner than by taking it apart. */
const MAY_MEASURE = /(?:ROWS?|COLUMNS?)\(/i;

/**
 * The areas on its own sheet of which a formula asks the place or the size alone. It does not wait for
 * what they hold: `ROWS(B$20:B20)`, which counts rows as it is filled down, may stand in B20 itself.
 */
export function measuredAreas(formula: string): Area[] {
  if (!MAY_MEASURE.test(formula)) return [];
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  const texts = tokens.map(({ text }) => text);
  return tokens.flatMap(({ kind, text }, at) => {
    if (kind !== "call" || !MEASURES.has(text.toUpperCase())) return [];
    const [argument = [], ...more] = argumentsIn(tokens.slice(at + 2, closingOf(texts, at + 1)));
    const area = more.length === 0 && parseArea(argument.map((token) => token.text).join(""));
    return area ? [area] : [];
  });
}
