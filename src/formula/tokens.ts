/** What a piece of a formula is. */
export type TokenKind =
  | "text"
  | "sheet"
  | "error"
  | "cell"
  | "columns"
  | "rows"
  | "call"
  | "structured"
  | "name"
  | "number"
  | "space"
  | "operator";

/** A piece of a formula: the pieces' texts one after another are the formula. */
export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
}

/*
 * A longer word never starts with a reference: in "A1B", "LOG10(" and "A1!", "A1", "LOG10" and "A1"
 * are part of a name, a function and a sheet's name.
 */
const ENDS = String.raw`(?![\p{L}\p{N}_.\\(!])`;
const WORD = String.raw`[\p{L}_\\][\p{L}\p{N}_.\\?]*`;

const PATTERNS: readonly (readonly [TokenKind, string])[] = [
  ["text", String.raw`"(?:[^"]|"")*"`],
  // 'Week 1'!, Log!, [1]Log!, Jan:Dec!
  [
    "sheet",
    String.raw`(?:'(?:[^']|'')*'|(?:\[[^\[\]]*\])?[\p{L}\p{N}_.\\][\p{L}\p{N}_.\\:]*|\[[^\[\]]*\])!`,
  ],
  [
    "error",
    String.raw`#(?:REF!|VALUE!|DIV/0!|NULL!|NUM!|NAME\?|N/A|SPILL!|CALC!|FIELD!|BLOCKED!|CONNECT!|BUSY!|UNKNOWN!|GETTING_DATA)`,
  ],
  ["columns", String.raw`\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}${ENDS}`],
  ["rows", String.raw`\$?\d{1,7}:\$?\d{1,7}${ENDS}`],
  ["cell", String.raw`\$?[A-Za-z]{1,3}\$?\d{1,7}${ENDS}`],
  ["call", String.raw`${WORD}(?=\()`],
  ["structured", String.raw`(?:${WORD})?\[(?:[^\[\]']|'.|\[(?:[^\[\]']|'.)*\])*\]`],
  ["name", WORD],
  ["number", String.raw`(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`],
  ["space", String.raw`\s+`],
  ["operator", String.raw`<>|<=|>=|[^]`],
];

const PATTERN = new RegExp(PATTERNS.map(([, source]) => `(${source})`).join("|"), "gu");

/** Takes a formula apart, with or without its "=". A season's log has 100,000 formulas, so without lists between. */
export function tokensOf(formula: string): Token[] {
  const tokens: Token[] = [];
  PATTERN.lastIndex = 0;
  for (let match = PATTERN.exec(formula); match; match = PATTERN.exec(formula)) {
    tokens.push({ kind: kindOf(match), text: match[0] });
  }
  return tokens;
}

/** Every pattern is a group, and the last one matches what no other does. */
function kindOf(match: RegExpExecArray): TokenKind {
  let group = 1;
  while (match[group] === undefined) group++;
  return PATTERNS[group - 1]?.[0] ?? "operator";
}
