import { tokensOf } from "./tokens";

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
      return tokens[cell]?.kind !== "cell" || /^[:#]/.test(tokens[cell + 1]?.text ?? "");
    })
    .map(({ text }) => text)
    .join("");
}
