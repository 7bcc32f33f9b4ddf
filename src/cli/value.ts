import { shownIn } from "../cells/shown";
import { onlyCell } from "../cells";
import { bookOf } from "../recalculate/book";
import type { Outcome } from "../recalculate/calculate";
import { readPackage, readWorkbook, writeWorkbook } from "../xlsx";
import type { CellValue } from "../xlsx/model";
import type { ValueArguments } from "./arguments";
import { columns } from "./columns";
import { writeCsv } from "./csv";
import { workOut, type ExitStatus } from "./eachBook";
import { Refused } from "./problem";
import { formulaAt } from "./tables";
import { complain, say, type Terminal } from "./terminal";

/** Answers one formula: its value on standard output, or its error with the message on standard error. */
export async function value(args: ValueArguments, terminal: Terminal): Promise<ExitStatus> {
  const text = args.formula.trim().replace(/^=/, "");
  const outcome = await outcomeOf(text, args.timeout, terminal);
  const [failure] = outcome.failures;
  const { values } = outcome;
  const json = () => ({
    formula: `=${text}`,
    values,
    error: failure?.code ?? null,
    message: failure?.message ?? null,
  });
  const only = onlyCell(values);
  if (!args.json && failure !== undefined && only !== undefined) {
    complain(`${failure.code} ${failure.message ?? `is what =${text} comes to`}`, terminal);
  } else {
    // The value is what was asked for, and no report on it: it is said even where no report is wanted.
    const said = args.csv ? writeCsv(values).trimEnd() : tableOf(values);
    say({ text: said, json }, { ...args, quiet: false }, terminal);
  }
  return outcome.failures.length > 0 ? 1 : 0;
}

async function outcomeOf(
  text: string,
  timeout: number | undefined,
  terminal: Terminal,
): Promise<Outcome> {
  const cell = { row: 0, column: 0, style: 0, value: null, formula: formulaAt(text, 0, 0) };
  const sheet = {
    ...{ name: "Value", hidden: false, gridlines: true, rightToLeft: false },
    ...{ merges: [], columns: new Map(), pictures: [] },
    rows: [{ row: 0, cells: [cell] }],
  };
  const file = writeWorkbook({
    ...{ sheets: [sheet], styles: [{}], names: [], tables: [], from1904: false },
  });
  const book = bookOf(readWorkbook(readPackage(file)));
  const [outcome] = await workOut(book, timeout, terminal);
  if (outcome === undefined) throw new Refused(`"${text}" uses no SPARE function`);
  if (outcome.left !== undefined) throw new Refused(`"${text}": ${outcome.left}`);
  return outcome;
}

/** One value with all its digits, or a table with those that cells of ordinary width show. */
function tableOf(values: readonly (readonly CellValue[])[]): string {
  const only = onlyCell(values);
  if (only !== undefined) return textOf(only, String);
  return columns(values.map((row) => row.map((one) => textOf(one, shownIn)))).join("\n");
}

function textOf(one: CellValue, numberText: (value: number) => string): string {
  if (typeof one === "number") return numberText(one);
  return one === null ? "" : String(one);
}
