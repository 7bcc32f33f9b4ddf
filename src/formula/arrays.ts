import { callsOurs } from "./spelling";
import type { Token } from "./tokens";
import { tokensOf } from "./tokens";

/*
 * A file keeps two kinds of formula. A plain one is worked out for one cell: where it meets a range
 * it takes the range's cell in its own row or column. One that is marked as an array is worked out
 * over whole ranges and may spill. What a person types today is always meant in the second way, so
 * everything that could tell the difference has to be marked.
 */

/** Functions that take whole ranges and answer with one value, in whatever kind of formula. */
const TAKES_RANGES = new Set(
  (
    "SUM AVERAGE COUNT COUNTA COUNTBLANK MAX MIN MEDIAN PRODUCT STDEV STDEV.S STDEV.P STDEVP VAR " +
    "VAR.S VAR.P VARP SUBTOTAL AND OR NPV IRR LARGE SMALL GEOMEAN HARMEAN AVEDEV DEVSQ SKEW KURT " +
    "PERCENTILE PERCENTILE.INC PERCENTILE.EXC QUARTILE QUARTILE.INC QUARTILE.EXC SLOPE INTERCEPT " +
    "CORREL PEARSON RSQ STEYX SUMPRODUCT SUMSQ ROWS COLUMNS CONCAT TEXTJOIN"
  ).split(" "),
);

/** Functions that can answer with many values, or with a range, though given single cells. */
const ANSWERS_WITH_MANY = new Set(
  (
    "ANCHORARRAY BYCOL BYROW CHOOSECOLS CHOOSEROWS DROP EXPAND FILTER FREQUENCY GROWTH HSTACK INDEX " +
    "INDIRECT LAMBDA LET LINEST LOGEST MAKEARRAY MAP MMULT MODE.MULT OFFSET RANDARRAY REDUCE " +
    "REGEXEXTRACT SCAN SEQUENCE SORT SORTBY TAKE TEXTSPLIT TOCOL TOROW TRANSPOSE TREND TRIMRANGE " +
    "UNIQUE VSTACK WRAPCOLS WRAPROWS XLOOKUP"
  ).split(" "),
);

/** Whether a formula has to be marked as an array to be worked out as the person meant it. */
export function needsArray(formula: string): boolean {
  if (callsOurs(formula)) return true;
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  const textAt = (index: number) => tokens[index]?.text ?? "";
  const open: string[] = [];

  return tokens.some((token, index) => {
    const { kind, text } = token;
    if (text === "(") open.push(tokens[index - 1]?.kind === "call" ? textAt(index - 1) : "");
    if (text === ")") open.pop();
    if (kind === "call") return ANSWERS_WITH_MANY.has(text.toUpperCase());
    if (text === "{" || text === "#") return true;
    if (!mayBeRange(token)) return false;
    const joined = textAt(index - 1) === ":" || textAt(index + 1) === ":";
    if (kind === "cell" && !joined) return false;
    return !(isArgument(index) && TAKES_RANGES.has((open.at(-1) ?? "").toUpperCase()));
  });

  /** Whether a range is all there is between the commas around it. */
  function isArgument(index: number): boolean {
    let first = index;
    let last = index;
    const inRange = (at: number) =>
      textAt(at) === ":" || ["cell", "sheet"].includes(tokens[at]?.kind ?? "");
    while (inRange(first - 1)) first--;
    while (inRange(last + 1)) last++;
    return "(,".includes(textAt(first - 1) || " ") && "),".includes(textAt(last + 1) || " ");
  }
}

function mayBeRange({ kind, text }: Token): boolean {
  if (/^(?:TRUE|FALSE)$/i.test(text)) return false;
  return ["cell", "columns", "rows", "structured", "name"].includes(kind);
}
