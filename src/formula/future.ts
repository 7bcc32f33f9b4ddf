import { closingOf } from "./calls";
import { respell } from "./spelling";
import type { Token } from "./tokens";
import { tokensOf } from "./tokens";

/*
 * A file marks functions that are younger than its format: `_xlfn.STDEV.S(`, and two of them
 * `_xlfn._xlws.SORT(`. The names a LET or a LAMBDA makes for itself are marked as well, `_xlpm.x`,
 * and two signs have functions of their own: `A1#` is `_xlfn.ANCHORARRAY(A1)`, `@A1:A9` is
 * `_xlfn.SINGLE(A1:A9)`. The list is that of [MS-XLSX] 2.2.2 and of the functions added since.
 */

const YOUNG = new Set(
  (
    "ACOT ACOTH AGGREGATE ARABIC ARRAYTOTEXT BASE BETA.DIST BETA.INV BINOM.DIST " +
    "BINOM.DIST.RANGE BINOM.INV BITAND BITLSHIFT BITOR BITRSHIFT BITXOR BYCOL BYROW " +
    "CEILING.MATH CEILING.PRECISE CHISQ.DIST CHISQ.DIST.RT CHISQ.INV CHISQ.INV.RT CHISQ.TEST " +
    "CHOOSECOLS CHOOSEROWS COMBINA CONCAT CONFIDENCE.NORM CONFIDENCE.T COT COTH COVARIANCE.P " +
    "COVARIANCE.S CSC CSCH DAYS DECIMAL DETECTLANGUAGE DROP ERF.PRECISE ERFC.PRECISE EXPAND " +
    "EXPON.DIST F.DIST F.DIST.RT F.INV F.INV.RT F.TEST FILTER FILTERXML FLOOR.MATH " +
    "FLOOR.PRECISE FORECAST.ETS FORECAST.ETS.CONFINT FORECAST.ETS.SEASONALITY " +
    "FORECAST.ETS.STAT FORECAST.LINEAR FORMULATEXT GAMMA GAMMA.DIST GAMMA.INV " +
    "GAMMALN.PRECISE GAUSS GROUPBY HSTACK HYPGEOM.DIST IFNA IFS IMAGE IMCOSH IMCOT IMCSC " +
    "IMCSCH IMSEC IMSECH IMSINH IMTAN ISFORMULA ISOMITTED ISOWEEKNUM LAMBDA LET LOGNORM.DIST " +
    "LOGNORM.INV MAKEARRAY MAP MAXIFS MINIFS MODE.MULT MODE.SNGL MUNIT NEGBINOM.DIST " +
    "NORM.DIST NORM.INV NORM.S.DIST NORM.S.INV NUMBERVALUE PDURATION PERCENTILE.EXC " +
    "PERCENTILE.INC PERCENTOF PERCENTRANK.EXC PERCENTRANK.INC PERMUTATIONA PHI PIVOTBY " +
    "POISSON.DIST QUARTILE.EXC QUARTILE.INC QUERYSTRING RANDARRAY RANK.AVG RANK.EQ REDUCE " +
    "REGEXEXTRACT REGEXREPLACE REGEXTEST RRI SCAN SEC SECH SEQUENCE SHEET SHEETS SKEW.P SORT " +
    "SORTBY STDEV.P STDEV.S SWITCH T.DIST T.DIST.2T T.DIST.RT T.INV T.INV.2T T.TEST TAKE " +
    "TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT TOCOL TOROW TRANSLATE TRIMRANGE UNICHAR UNICODE " +
    "UNIQUE VALUETOTEXT VAR.P VAR.S VSTACK WEBSERVICE WEIBULL.DIST WRAPCOLS WRAPROWS XLOOKUP " +
    "XMATCH XOR Z.TEST"
  ).split(" "),
);
const YOUNGEST = new Set(["FILTER", "SORT"]);

/** A formula as a person reads it, of one as a file keeps it; both without their "=". */
export function fromFile(formula: string): string {
  const texts = tokensOf(formula).map(({ kind, text }) => {
    if (kind === "call") return text.replace(/^(?:_xlfn\.)?(?:_xlws\.)?(?:_xlpm\.)?/i, "");
    return kind === "name" ? text.replace(/^_xl(?:pm|op)\./i, "") : text;
  });
  texts.forEach((text, call) => {
    if (text !== "ANCHORARRAY" && text !== "SINGLE") return;
    const end = closingOf(texts, call + 1);
    if (end === undefined) return;
    texts[call] = text === "SINGLE" ? "@" : "";
    texts[call + 1] = "";
    texts[end] = text === "SINGLE" ? "" : "#";
  });
  return respell(texts.join(""), "excel");
}

/** A formula as a file keeps it, of one as a person reads it; both without their "=". */
export function toFile(formula: string): string {
  const tokens = tokensOf(formula);
  const own = namesMadeIn(formula);
  const marked = tokens.map(({ kind, text }) => {
    const name = text.toUpperCase();
    if (own.has(name) && ["call", "name", "cell"].includes(kind)) return `_xlpm.${text}`;
    if (kind !== "call") return text;
    if (YOUNGEST.has(name)) return `_xlfn._xlws.${name}`;
    return YOUNG.has(name) ? `_xlfn.${name}` : text;
  });
  tokens.forEach(({ text }, index) => {
    if (text === "#") {
      const first = operandBefore(tokens, index);
      marked[first] = `_xlfn.ANCHORARRAY(${marked[first]}`;
      marked[index] = ")";
    }
    if (text === "@") {
      const last = operandAfter(tokens, index);
      marked[index] = "_xlfn.SINGLE(";
      marked[last] += ")";
    }
  });
  return respell(marked.join(""), "excel file");
}

/** A "#" stands after one cell, maybe of another sheet. */
function operandBefore(tokens: readonly Token[], sign: number): number {
  return tokens[sign - 2]?.kind === "sheet" ? sign - 2 : Math.max(0, sign - 1);
}

/** An "@" stands before a range, a name or a call. */
function operandAfter(tokens: readonly Token[], sign: number): number {
  let last = sign + 1;
  if (tokens[last]?.kind === "sheet") last++;
  if (tokens[last]?.kind === "call") {
    const texts = tokens.map(({ text }) => text);
    return closingOf(texts, last + 1) ?? tokens.length - 1;
  }
  if (tokens[last + 1]?.text === ":") last += 2;
  return Math.min(last, tokens.length - 1);
}

/** The names a formula's LETs and LAMBDAs make: each stands between "(" or "," and a comma. */
function namesMadeIn(formula: string): ReadonlySet<string> {
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  const made = new Set<string>();
  const open: { call: string; argument: number }[] = [];
  tokens.forEach(({ kind, text }, index) => {
    const before = tokens[index - 1];
    const inside = open.at(-1);
    if (text === "(" || text === "{") {
      open.push({ call: before?.kind === "call" ? before.text.toUpperCase() : "", argument: 0 });
    } else if (text === ")" || text === "}") open.pop();
    else if (text === "," && inside) inside.argument++;
    else if (kind === "name" && inside && tokens[index + 1]?.text === ",") {
      const starts = before?.text === "(" || before?.text === ",";
      const isName = inside.call === "LET" ? inside.argument % 2 === 0 : inside.call === "LAMBDA";
      if (starts && isName) made.add(text.toUpperCase());
    }
  });
  return made;
}
