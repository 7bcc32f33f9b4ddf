import { open } from "node:fs/promises";
import { visible } from "../../cells/visible";
import { UnreadableFile } from "../../xlsx/package";
import type { TableArguments } from "../arguments";
import { writeCsv } from "../csv";
import { eachBook, type Done, type ExitStatus } from "../eachBook";
import { endingOf, isText } from "../ending";
import { checkInput, STANDARD } from "../files";
import { Refused } from "../problem";
import { DRY_RUN, writtenTo } from "../report";
import { checkOutput } from "../output";
import { makeFolder, targetsOf } from "../targets";
import type { Terminal } from "../terminal";
import { within } from "../../engine/within";
import { writeResult } from "../writeResult";
import { withTable } from "./database";
import { readFormula, type TableFormula } from "./formula";
import { summarise } from "./summarise";

/** Answers one formula over tables that may be too large for a workbook. */
export async function table(args: TableArguments, terminal: Terminal): Promise<ExitStatus> {
  const formula = readFormula(args.formula);
  const targets = await targetsOf(args.inputs, args.output ?? STANDARD, () => undefined);
  if (targets.folder !== undefined && !args.dryRun) await makeFolder(targets.folder);
  return eachBook(args, terminal, (input) =>
    tableOne(input, targets.of(input)!, formula, args, terminal),
  );
}

async function tableOne(
  input: string,
  output: string,
  formula: TableFormula,
  { dryRun, timeout }: TableArguments,
  terminal: Terminal,
): Promise<Done> {
  const kind = await kindOf(input);
  const isParquet = endingOf(output) === "parquet";
  if (!isParquet && !isText(endingOf(output)) && endingOf(output) !== "") {
    throw new Refused(`${output} cannot be written: a table is written as .csv, .tsv or .parquet`);
  }
  if (!dryRun && output !== STANDARD) await checkOutput(output);
  const work = withTable(input, kind, async (database) => {
    const summary = await summarise(formula, database);
    if (!dryRun) {
      const separator = endingOf(output) === "tsv" ? "\t" : ",";
      const bytes = isParquet
        ? await database.parquet(summary.headings, summary.rows)
        : new TextEncoder().encode(writeCsv([summary.headings, ...summary.rows], separator));
      await writeResult(output, bytes, terminal.out);
    }
    return summary;
  });
  const { read, keys, rows } = await within(timeout, work);
  const target = dryRun ? undefined : output;
  const json = {
    ...{ file: input, output: target ?? null, formula: `=${formula.text}`, read, keys },
    rows: rows.length,
  };
  return {
    status: 0,
    text: [
      visible(input),
      `  rows read     ${read}`,
      ...(keys === 0 ? [] : [`  keys          ${keys}`]),
      `  rows written  ${dryRun ? 0 : rows.length}`,
      "",
      dryRun ? DRY_RUN : writtenTo(output),
    ].join("\n"),
    json: () => json,
    target,
  };
}

/** What a table's file is, by its name, if its first bytes bear it out. */
async function kindOf(input: string): Promise<"csv" | "tsv" | "parquet"> {
  await checkInput(input);
  const ending = endingOf(input);
  const file = await open(input);
  const start = Buffer.alloc(4096);
  const { bytesRead } = await file.read(start, 0, start.length).finally(() => file.close());
  if (bytesRead === 0) throw new UnreadableFile("the file is empty");
  const isParquet = start.toString("latin1", 0, 4) === "PAR1";
  if (ending === "parquet" || isText(ending)) {
    const isBinary =
      start.subarray(0, bytesRead).includes(0) || start.toString("latin1", 0, 2) === "PK";
    if (isParquet !== (ending === "parquet") || (!isParquet && isBinary)) {
      throw new UnreadableFile(
        `its name ends in .${ending}, and what it holds is ${isParquet ? "a Parquet table" : "not that"}`,
      );
    }
    return ending;
  }
  throw new UnreadableFile("a table is read from a .csv, .tsv or .parquet file");
}
