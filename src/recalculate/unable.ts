import { callsOurs } from "../formula/spelling";
import { nameOn, type Name } from "../formula/names";
import { plainFormula } from "../formula/plain";
import { tokensOf, type Token } from "../formula/tokens";
import type { Book, FormulaCell } from "./book";

/**
 * Why the engine cannot work a formula out as Excel would, or nothing where it can. Such a formula
 * keeps the value it was saved with.
 */
export type Unable = (cell: FormulaCell) => string | undefined;

/** These depend on the program, the computer or the network, not on the workbook alone. */
const dependsOnSurroundings = new Set(
  "CELL CUBEVALUE GETPIVOTDATA IMAGE INFO RTD WEBSERVICE".split(" "),
);

/** These turn days into numbers or back, which a workbook that counts from 1904 does otherwise. */
const countsDays = new Set(
  (
    "DATE DATEDIF DATEVALUE DAY DAYS DAYS360 EDATE EOMONTH ISOWEEKNUM MONTH NETWORKDAYS " +
    "NETWORKDAYS.INTL NOW TEXT TODAY WEEKDAY WEEKNUM WORKDAY WORKDAY.INTL YEAR YEARFRAC"
  ).split(" "),
);

/** These answer differently where rows are hidden or filtered out. */
const skipsHiddenRows = new Set(["AGGREGATE", "SUBTOTAL"]);

/** These count cells of whole columns that nobody filled, and the engine's sheets end early. */
const countsEmptyCells = new Set(["COLUMNS", "COUNTBLANK", "ROWS"]);

/** `known` are the functions that the engine computes, in upper case. */
export function findUnable(book: Book, known: ReadonlySet<string>): Unable {
  const rowsAreHidden = book.sheets.some(({ rows }) => rows.some((row) => row.hidden));
  const names = new Set(book.names.map(({ name }) => name.toLowerCase()));

  return ({ kind, text, sheet, row, column }) => {
    if (kind === "data table") return "a what-if table is worked out by Excel alone";
    const formula = plainFormula(text, book.tables, { sheet: sheet.name, row, column });
    return whyNot(formula, sheet.name, new Set());
  };

  function whyNot(formula: string, sheet: string, seen: Set<string>): string | undefined {
    const tokens = tokensOf(formula);
    const whole = tokens.some(({ kind }) => kind === "columns" || kind === "rows");
    for (const token of tokens) {
      const reason =
        token.kind === "call"
          ? whyNotCall(token, whole)
          : token.kind === "sheet"
            ? whyNotSheet(token.text)
            : undefined;
      if (reason) return reason;
      if (token.kind !== "name" && token.kind !== "call") continue;
      const key = token.text.toLowerCase();
      const name = names.has(key) ? nameOn(sheet, key, book.names) : undefined;
      if (!name || seen.has(key)) continue;
      const inName = whyNotName(name, sheet, new Set([...seen, key]));
      if (inName) return inName;
    }
    return undefined;
  }

  function whyNotCall({ text }: Token, whole: boolean): string | undefined {
    const name = text.toUpperCase();
    if (callsOurs(`${text}(`) || names.has(text.toLowerCase()) || name.startsWith("_XLPM.")) {
      return undefined;
    }
    if (dependsOnSurroundings.has(name)) return `${name} depends on more than the workbook`;
    if (!known.has(name)) return `${name} is not a function we can compute`;
    if (book.from1904 && countsDays.has(name)) {
      return `${name} counts days from 1904 in this workbook`;
    }
    if (rowsAreHidden && skipsHiddenRows.has(name)) return `${name} depends on hidden rows`;
    if (whole && countsEmptyCells.has(name)) return `${name} counts empty cells of whole columns`;
    return undefined;
  }

  function whyNotName(name: Name, sheet: string, seen: Set<string>): string | undefined {
    const formula = plainFormula(name.text, book.tables, { sheet, row: -1, column: -1 });
    const relative = tokensOf(formula).some(({ kind, text }) => {
      return kind === "cell" && !/^\$[A-Za-z]+\$\d+$/.test(text);
    });
    if (relative) return `the name ${name.name} reads other cells from every cell`;
    return whyNot(formula, sheet, seen);
  }
}

function whyNotSheet(text: string): string | undefined {
  if (text.includes("[")) return "it reads another workbook";
  return /^[^']*:/.test(text) || /:[^']*'!$/.test(text)
    ? "it reads the same cells of several sheets"
    : undefined;
}
