import { changesOf } from "../recalculate/saveValues";
import { plainCopy } from "../recalculate/copies/plain";
import { portableCopy } from "../recalculate/copies/portable";
import { writePackage } from "../xlsx";
import type { CopyArguments } from "./arguments";
import { reportOnCopy, writeCopyReport } from "./copyReport";
import { eachBook, workOut, type Done, type ExitStatus } from "./eachBook";
import { endingOf, isText } from "./ending";
import { deflate } from "./files";
import { openBook } from "./openBook";
import { findingsOf, reportOn, statusOf } from "./report";
import { checkTarget, makeFolder, targetsOf } from "./targets";
import type { Terminal } from "./terminal";
import { writeResult } from "./writeResult";

/** Makes copies of workbooks that need no add-in. */
export async function copy(args: CopyArguments, terminal: Terminal): Promise<ExitStatus> {
  const targets = await targetsOf(args.inputs, args.output, (input) =>
    isText(endingOf(input)) ? "xlsx" : undefined,
  );
  if (targets.folder !== undefined && !args.dryRun) await makeFolder(targets.folder);
  return eachBook(args, terminal, (input) => copyOne(input, targets.of(input)!, args, terminal));
}

async function copyOne(
  input: string,
  target: string,
  args: CopyArguments,
  terminal: Terminal,
): Promise<Done> {
  const { book, kind } = await openBook(input, terminal.in);
  const copyKind = isText(kind) ? "xlsx" : kind;
  if (!args.dryRun) await checkTarget(target, copyKind, terminal.out.isTTY === true);
  const outcomes = await workOut(book, args.timeout, terminal);
  const made = (args.command === "plain" ? plainCopy : portableCopy)(book, outcomes);
  if (!args.dryRun) {
    await writeResult(target, writePackage(made.file, deflate), terminal.out);
  }
  const written = args.dryRun ? null : target;
  const findings = findingsOf(input, written, outcomes, changesOf(outcomes), book.styles);
  return {
    status: statusOf(findings),
    text: writeCopyReport(findings, made, args.dryRun),
    json: () => ({ ...reportOn(findings), ...reportOnCopy(made) }),
    target: args.dryRun ? undefined : target,
  };
}
