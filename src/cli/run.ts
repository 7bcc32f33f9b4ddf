import manifest from "../../package.json";
import { visible } from "../cells/visible";
import { implementations } from "../functions/implementations";
import { CardProblem } from "../cards/card";
import { bookOf } from "../recalculate/book";
import { calculate } from "../recalculate/calculate";
import type { Functions } from "../recalculate/inEngine";
import { changesOf, saveValues } from "../recalculate/saveValues";
import { plainCopy } from "../recalculate/copies/plain";
import { portableCopy } from "../recalculate/copies/portable";
import { readPackage, readWorkbook, UnreadableFile, writePackage, type Package } from "../xlsx";
import {
  BadUsage,
  readArguments,
  USAGE,
  type Arguments,
  type CalcArguments,
  type CardsArguments,
  type CopyArguments,
  type WorkbookArguments,
} from "./arguments";
import { writeCards } from "./cards";
import { reportOnCopy, writeCopyReport } from "./copyReport";
import { deflate, inflate, readInput, refuseSameFile } from "./files";
import { checkOutput, writeOutput } from "./output";
import { progressBar, type Screen } from "./progress";
import { findingsOf, reportOn, statusOf, writeJson, writeReport } from "./report";

/** Where the command line talks to: its standard output and error. */
export interface Terminal {
  readonly out: Screen;
  readonly err: Screen;
}

/** 1 says that some cells failed or keep an old value, 2 that nothing could be done. */
export type ExitStatus = 0 | 1 | 2;

/** Every function we have; a workbook without a screen needs no help texts. */
const functions: Functions = {
  metadata: { functions: Object.keys(implementations).map((id) => ({ id, parameters: [] })) },
  implementations,
};

/** Runs one command line. Whatever goes wrong is one line on standard error. */
export async function run(args: readonly string[], terminal: Terminal): Promise<ExitStatus> {
  let named = "";
  try {
    const read = readArguments(args);
    if ("input" in read) named = `${read.input}: `;
    return await follow(read, terminal);
  } catch (error) {
    terminal.err.write(`spare: ${visible(lineOn(error, named))}\n`);
    return 2;
  }
}

/** What is said of an error, by the file that was named. */
function lineOn(error: unknown, named: string): string {
  if (error instanceof BadUsage) return `${error.message} (spare --help shows how it is used)`;
  const reason = error instanceof Error ? error.message : String(error);
  if (error instanceof UnreadableFile || error instanceof CardProblem) return named + reason;
  return `${named}this could not be computed: ${reason}`;
}

async function follow(args: Arguments, terminal: Terminal): Promise<ExitStatus> {
  switch (args.command) {
    case "help":
      terminal.out.write(`${USAGE}\n`);
      return 0;
    case "version":
      terminal.out.write(`${manifest.version}\n`);
      return 0;
    case "calc":
      return calc(args, terminal);
    case "plain":
      return copy(args, plainCopy, terminal);
    case "portable":
      return copy(args, portableCopy, terminal);
    case "cards":
      return cards(args, terminal);
  }
}

async function calc(args: CalcArguments, terminal: Terminal): Promise<ExitStatus> {
  const output = args.inPlace ? args.input : args.output;
  if (!args.inPlace && output !== undefined) await refuseSameFile(args.input, output);
  if (output !== undefined && !args.dryRun) await checkOutput(output);
  const { book, outcomes } = await workOut(args, terminal);
  const target = args.dryRun ? undefined : output;
  const changes = changesOf(outcomes);
  if (target !== undefined) await write(target, saveValues(book, outcomes, changes));
  const findings = findingsOf(args.input, target ?? null, outcomes, changes, book.styles);
  const text = args.json ? writeJson(reportOn(findings)) : writeReport(findings, args.dryRun);
  terminal.out.write(`${text}\n`);
  return statusOf(findings);
}

async function copy(
  args: CopyArguments,
  make: typeof plainCopy,
  terminal: Terminal,
): Promise<ExitStatus> {
  const { input, output } = args;
  await refuseSameFile(input, output);
  await checkOutput(output);
  const { book, outcomes } = await workOut(args, terminal);
  const made = make(book, outcomes);
  await write(output, made.file);
  const findings = findingsOf(input, output, outcomes, changesOf(outcomes), book.styles);
  const text = args.json
    ? writeJson({ ...reportOn(findings), ...reportOnCopy(made) })
    : writeCopyReport(findings, made);
  terminal.out.write(`${text}\n`);
  return statusOf(findings);
}

async function write(path: string, file: Package): Promise<void> {
  await writeOutput(path, writePackage(file, deflate));
}

async function cards(args: CardsArguments, terminal: Terminal): Promise<ExitStatus> {
  const { book, outcomes } = await workOut(args, terminal);
  terminal.out.write(`${await writeCards(args, book, outcomes)}\n`);
  return 0;
}

async function workOut({ input, timeout }: WorkbookArguments, terminal: Terminal) {
  const book = bookOf(readWorkbook(readPackage(await readInput(input), inflate)));
  const bar = progressBar(terminal.err);
  try {
    return { book, outcomes: await within(timeout, calculate(book, functions, bar.update)) };
  } finally {
    bar.clear();
  }
}

/** A timer knows no more milliseconds. */
const LONGEST_TIMER = 2 ** 31 - 1;

/** What work comes to, unless that takes longer than so many seconds. */
async function within<T>(seconds: number | undefined, work: Promise<T>): Promise<T> {
  if (seconds === undefined) return work;
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    const reason = new Error(`it took longer than ${seconds} seconds`);
    timer = setTimeout(() => reject(reason), Math.min(seconds * 1000, LONGEST_TIMER));
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}
