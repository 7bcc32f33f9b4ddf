import { cannotCompute } from "../formula/cannotCompute";
import { nameOn, type Name } from "../formula/names";
import { plainFormula } from "../formula/plain";
import { judgeNames, unusableIn } from "../formula/unusableNames";
import { tokensOf } from "../formula/tokens";
import { LIMITS } from "../xlsx/limits";
import type { Book, FormulaCell } from "./book";

/**
 * Why the engine cannot work a formula out as Excel would, or nothing where it can. Such a formula
 * keeps the value it was saved with.
 */
export type Unable = (cell: FormulaCell) => string | undefined;

/** These turn days into numbers or back, which a workbook that counts from 1904 does otherwise. */
const COUNTS_DAYS = new Set(
  (
    "DATE DATEDIF DATEVALUE DAY DAYS DAYS360 EDATE EOMONTH ISOWEEKNUM MONTH NETWORKDAYS " +
    "NETWORKDAYS.INTL NOW TEXT TODAY WEEKDAY WEEKNUM WORKDAY WORKDAY.INTL YEAR YEARFRAC"
  ).split(" "),
);

/** These answer differently where rows are hidden or filtered out. */
const SKIPS_HIDDEN_ROWS = new Set(["AGGREGATE", "SUBTOTAL"]);

/** These count cells of whole columns that nobody filled, and the engine's sheets end early. */
const COUNTS_EMPTY_CELLS = new Set(["COLUMNS", "COUNTBLANK", "ROWS"]);

/** `known` are the functions that the engine computes, in upper case. */
export function findUnable(book: Book, known: ReadonlySet<string>): Unable {
  const rowsAreHidden = book.sheets.some(({ rows }) => rows.some((row) => row.hidden));
  const names = new Set(book.names.map(({ name }) => name.toLowerCase()));
  const isName = (text: string) => names.has(text.toLowerCase());
  const sheets = book.sheets.map(({ name }) => name);
  const judged = judgeNames(book.names, LIMITS.names);
  const ofNames = new Map<Name, string | undefined>();

  return ({ kind, text, sheet, row, column }) => {
    if (kind === "data table") return "a what-if table is worked out by Excel alone";
    const formula = plainFormula(text, book.tables, { sheet: sheet.name, row, column });
    return whyNot(formula, sheet.name);
  };

  function whyNot(formula: string, sheet: string): string | undefined {
    const reason = cannotCompute(formula, { known, sheets, isName }) ?? whyNotHere(formula);
    if (reason) return reason;
    const broken = unusableIn(formula, judged);
    if (broken) return broken.why.reason;
    for (const { kind, text } of tokensOf(formula)) {
      if ((kind !== "name" && kind !== "call") || !isName(text)) continue;
      const name = nameOn(sheet, text, book.names);
      const inName = name && whyNotName(name, sheet);
      if (inName) return inName;
    }
    return undefined;
  }

  /** What stands in the way in this workbook, though not in another. */
  function whyNotHere(formula: string): string | undefined {
    const tokens = tokensOf(formula);
    const whole = tokens.some(({ kind }) => kind === "columns" || kind === "rows");
    const calls = tokens.filter(({ kind }) => kind === "call");
    for (const name of calls.map(({ text }) => text.toUpperCase())) {
      if (book.from1904 && COUNTS_DAYS.has(name)) {
        return `${name} counts days from 1904 in this workbook`;
      }
      if (rowsAreHidden && SKIPS_HIDDEN_ROWS.has(name)) return `${name} depends on hidden rows`;
      if (whole && COUNTS_EMPTY_CELLS.has(name))
        return `${name} counts empty cells of whole columns`;
    }
    return undefined;
  }

  /** Every name is judged once; one that is met again while it is judged says nothing new. */
  function whyNotName(name: Name, sheet: string): string | undefined {
    if (ofNames.has(name)) return ofNames.get(name);
    ofNames.set(name, undefined);
    const formula = plainFormula(name.text, book.tables, { sheet, row: -1, column: -1 });
    const relative = tokensOf(formula).some(({ kind, text }) => {
      return kind === "cell" && !/^\$[A-Za-z]+\$\d+$/.test(text);
    });
    const reason = relative
      ? `the name ${name.name} reads other cells from every cell`
      : whyNot(formula, sheet);
    ofNames.set(name, reason);
    return reason;
  }
}
