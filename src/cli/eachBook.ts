import { CardProblem } from "../cards/card";
import { implementations } from "../functions/implementations";
import { calculate } from "../recalculate/calculate";
import type { Functions } from "../recalculate/inEngine";
import type { Outcome } from "../recalculate/calculate";
import type { Book } from "../recalculate/book";
import { UnreadableFile } from "../xlsx";
import type { BooksArguments } from "./arguments";
import { STANDARD } from "./files";
import { BadUsage, FormulaFailed, Refused } from "./problem";
import { progressBar } from "./progress";
import { complain, say, type Said, type Terminal } from "./terminal";
import { within } from "../engine/within";

/** 1 says that some cells failed or keep an old value, 2 that nothing could be done. */
export type ExitStatus = 0 | 1 | 2;

/** What came of one workbook. */
export interface Done extends Said {
  readonly status: ExitStatus;
  /** Where the result went, if it did. */
  readonly target?: string | undefined;
}

/** Every function we have; a workbook without a screen needs no help texts. */
const functions: Functions = {
  metadata: { functions: Object.keys(implementations).map((id) => ({ id, parameters: [] })) },
  implementations,
};

/**
 * Does something with each of some workbooks. What goes wrong with one is one line, and the rest goes on; the status is
 * the worst there was. Reports for programs are one object for one file, and a list for several.
 */
export async function eachBook(
  args: BooksArguments,
  terminal: Terminal,
  work: (input: string) => Promise<Done>,
): Promise<ExitStatus> {
  const { inputs, json } = args;
  const several = inputs.length > 1;
  const reports: object[] = [];
  let worst: ExitStatus = 0;
  let said = false;
  for (const input of inputs) {
    try {
      const { status, target, ...report } = await work(input);
      if (status > worst) worst = status;
      if (several && json) reports.push(report.json());
      else {
        const text = said ? `\n${report.text}` : report.text;
        say({ ...report, text }, args, terminal, target);
        said = true;
      }
    } catch (error) {
      const line = lineOn(error, nameOf(input));
      complain(line, terminal);
      reports.push({ file: input, error: line });
      if (!(error instanceof FormulaFailed)) worst = 2;
      else if (worst < 1) worst = 1;
    }
  }
  if (several && json) say({ text: "", json: () => reports }, args, terminal);
  return worst;
}

/** A workbook's formulas, worked out. */
export async function workOut(
  book: Book,
  timeout: number | undefined,
  terminal: Terminal,
): Promise<Outcome[]> {
  const bar = progressBar(terminal.err);
  try {
    return await within(timeout, calculate(book, functions, bar.update));
  } finally {
    bar.clear();
  }
}

/** What is said of an error, by the file that was named. */
export function lineOn(error: unknown, named?: string): string {
  const reason = error instanceof Error ? error.message : String(error);
  if (error instanceof BadUsage || error instanceof Refused) return reason;
  const lead = named === undefined ? "" : `${named}: `;
  if ([UnreadableFile, CardProblem, FormulaFailed].some((kind) => error instanceof kind)) {
    return lead + reason;
  }
  return `${lead}this could not be computed: ${reason}`;
}

/** How a message calls a file. */
export const nameOf = (input: string) => (input === STANDARD ? "standard input" : input);
