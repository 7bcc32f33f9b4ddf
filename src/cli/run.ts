import manifest from "../../package.json";
import { implementations } from "../functions/implementations";
import { CardProblem } from "../cards/card";
import { bookOf } from "../recalculate/book";
import { calculate, type Functions } from "../recalculate/calculate";
import { saveValues } from "../recalculate/saveValues";
import { plainCopy } from "../recalculate/copies/plain";
import { portableCopy } from "../recalculate/copies/portable";
import { readPackage, readWorkbook, UnreadableFile, writePackage } from "../xlsx";
import {
  BadUsage,
  readArguments,
  usage,
  type Arguments,
  type CalcArguments,
  type CardsArguments,
} from "./arguments";
import { writeCards } from "./cards";
import { readInput, refuseSameFile, writeOutput } from "./files";
import { progressBar, type Screen } from "./progress";
import { reportOn, writeReport } from "./report";

/** Where the command line talks to: its standard output and error. */
export interface Terminal {
  readonly out: Screen;
  readonly err: Screen;
}

/** 1 says that some cells failed, 2 that nothing could be done. */
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
    if (error instanceof BadUsage) {
      terminal.err.write(`spare: ${error.message} (spare --help shows how it is used)\n`);
    } else if (error instanceof UnreadableFile || error instanceof CardProblem) {
      terminal.err.write(`spare: ${named}${error.message}\n`);
    } else {
      const reason = error instanceof Error ? error.message : String(error);
      terminal.err.write(`spare: ${named}this could not be computed: ${reason}\n`);
    }
    return 2;
  }
}

async function follow(args: Arguments, terminal: Terminal): Promise<ExitStatus> {
  switch (args.command) {
    case "help":
      terminal.out.write(`${usage}\n`);
      return 0;
    case "version":
      terminal.out.write(`${manifest.version}\n`);
      return 0;
    case "calc":
      return calc(args, terminal);
    case "plain":
      return copy(args.input, args.output, plainCopy, terminal);
    case "portable":
      return copy(args.input, args.output, portableCopy, terminal);
    case "cards":
      return cards(args, terminal);
  }
}

async function calc(args: CalcArguments, terminal: Terminal): Promise<ExitStatus> {
  const output = args.inPlace ? args.input : args.output;
  if (!args.inPlace && output !== undefined) await refuseSameFile(args.input, output);
  const { book, outcomes } = await workOut(args.input, terminal);
  if (output !== undefined) await writeOutput(output, writePackage(saveValues(book, outcomes)));
  const report = reportOn(args.input, output ?? null, outcomes);
  terminal.out.write(`${args.json ? JSON.stringify(report, null, 2) : writeReport(report)}\n`);
  return report.failed.length > 0 ? 1 : 0;
}

async function copy(
  input: string,
  output: string,
  make: typeof plainCopy,
  terminal: Terminal,
): Promise<ExitStatus> {
  await refuseSameFile(input, output);
  const { book, outcomes } = await workOut(input, terminal);
  await writeOutput(output, writePackage(make(book, outcomes)));
  const report = reportOn(input, output, outcomes);
  terminal.out.write(`${writeReport(report)}\n`);
  return report.failed.length > 0 ? 1 : 0;
}

async function cards(args: CardsArguments, terminal: Terminal): Promise<ExitStatus> {
  const { book, outcomes } = await workOut(args.input, terminal);
  terminal.out.write(`${await writeCards(args, book, outcomes)}\n`);
  return 0;
}

async function workOut(input: string, terminal: Terminal) {
  const book = bookOf(readWorkbook(readPackage(await readInput(input))));
  const bar = progressBar(terminal.err);
  try {
    return { book, outcomes: await calculate(book, functions, bar.update) };
  } finally {
    bar.clear();
  }
}
