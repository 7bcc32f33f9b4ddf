import type { Outcome } from "../recalculate/calculate";
import { changesOf, saveValues, type BookChanges } from "../recalculate/saveValues";
import { writePackage } from "../xlsx";
import type { CalcArguments } from "./arguments";
import { writeCsv } from "./csv";
import { eachBook, workOut, type Done, type ExitStatus } from "./eachBook";
import { isText, type Kind } from "./ending";
import { deflate } from "./files";
import { openBook, type OpenBook } from "./openBook";
import { BadUsage, Refused } from "./problem";
import { findingsOf, reportOn, statusOf, writeReport } from "./report";
import { tableWith, valuesOf } from "./tables";
import { checkTarget, kindFor, makeFolder, targetsOf } from "./targets";
import type { Terminal } from "./terminal";
import { writeResult } from "./writeResult";

/** Works out workbooks, and saves what came of it where that is asked for. */
export async function calc(args: CalcArguments, terminal: Terminal): Promise<ExitStatus> {
  const { inputs, output, inPlace, csv } = args;
  if (csv && (inPlace || output === undefined)) throw new BadUsage("--csv needs -o");
  const targets = await targetsOf(inputs, output, () => (csv ? "csv" : undefined));
  if (targets.folder !== undefined && !args.dryRun) await makeFolder(targets.folder);
  return eachBook(args, terminal, (input) =>
    calcOne(input, inPlace ? input : targets.of(input), args, terminal),
  );
}

async function calcOne(
  input: string,
  output: string | undefined,
  args: CalcArguments,
  terminal: Terminal,
): Promise<Done> {
  const target = args.dryRun ? undefined : output;
  const open = await openBook(input, terminal.in);
  const kind = output === undefined ? open.kind : kindFor(output, open.kind, args.csv);
  if (args.sheet !== undefined) sheetNamed(open, args.sheet);
  if (target !== undefined) await checkTarget(target, kind, terminal.out.isTTY === true);
  const outcomes = await workOut(open.book, args.timeout, terminal);
  const changes = changesOf(outcomes);
  if (target !== undefined) {
    await writeResult(target, bytesOf(open, kind, outcomes, changes, args.sheet), terminal.out);
  }
  const findings = findingsOf(input, target ?? null, outcomes, changes, open.book.styles);
  return {
    status: statusOf(findings),
    text: writeReport(findings, args.dryRun),
    json: () => reportOn(findings),
    target,
  };
}

/** The result as a file of a kind. */
function bytesOf(
  open: OpenBook,
  kind: Kind,
  outcomes: readonly Outcome[],
  changes: BookChanges,
  sheet: string | undefined,
): Uint8Array {
  const { book, table } = open;
  if (!isText(kind)) return writePackage(saveValues(book, outcomes, changes), deflate);
  const text =
    table !== undefined && kind === open.kind
      ? tableWith(table, changes)
      : writeCsv(valuesOf(sheetNamed(open, sheet), book, changes), kind === "tsv" ? "\t" : ",");
  return new TextEncoder().encode(text);
}

/** The sheet that a result of a single one is of: the first unless one is named. */
function sheetNamed({ book: { sheets } }: OpenBook, name: string | undefined) {
  const found =
    name === undefined
      ? sheets[0]
      : sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  if (found === undefined) throw new Refused(`there is no sheet "${name}"`);
  return found;
}
