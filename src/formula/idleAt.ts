import { tokensOf, type Token } from "./tokens";

/**
 * The same formula without an "@" before a single cell. It takes one cell of a range, the one on the formula's own row
 * or column, and of a single cell that cell.
 */
export function withoutIdleAt(formula: string): string {
  if (!formula.includes("@")) return formula;
  const tokens = tokensOf(formula);
  return tokens
    .filter(({ kind, text }, at) => {
      if (kind !== "operator" || text !== "@") return true;
      const cell = tokens[at + 1]?.kind === "sheet" ? at + 2 : at + 1;
      return tokens[cell]?.kind !== "cell" || goesOn(tokens.slice(cell + 1));
    })
    .map(({ text }) => text)
    .join("");
}

/** Whether what follows a cell makes it part of a range, of what it spills, or of what it has in common with others. */
function goesOn([next, ...rest]: readonly Token[]): boolean {
  if (next?.kind !== "space") return next?.text === ":" || next?.text === "#";
  return rest[0]?.text === ":" || (rest[0] !== undefined && rest[0].kind !== "operator");
}
