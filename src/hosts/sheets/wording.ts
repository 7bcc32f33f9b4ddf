import { respell } from "../../formula/spelling";

/**
 * A formula of ours as it is typed in Sheets: underscores in the names, and no `&""` behind a range. Sheets passes
 * a blank cell as a blank anyhow, and there `D2:D20&""` would be one cell unless ARRAYFORMULA stands around it.
 */
export const formulaForSheets = (formula: string) =>
  respell(formula, "sheets").replace(BLANK_SAFE, "$1");

const BLANK_SAFE = /(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?)&""/g;

/** A description without the advice to write `&""`, which is for Excel alone. */
export const textForSheets = (text: string) =>
  text
    .replace(/[;:]\s+write [^.]*&""[^.]*\./gi, ".")
    .replace(/\s*\b[A-Z][^.]*&""[^.]*\./g, "")
    .trim();
