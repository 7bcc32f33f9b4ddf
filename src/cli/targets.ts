import { mkdir, stat } from "node:fs/promises";
import { basename, extname, join } from "node:path";
import { endingOf, isText, misfit, type Kind } from "./ending";
import { reasonOf, refuseSameFile, STANDARD } from "./files";
import { checkOutput } from "./output";
import { BadUsage, Refused } from "./problem";

/** Where results go: under one name, or into a folder, each under its file's own name. */
export interface Targets {
  /** The folder, where there is one. */
  readonly folder: string | undefined;
  /** Where the result of a file goes; nowhere where nothing is written. */
  of(input: string): string | undefined;
}

/**
 * Where the results of some files go, in a folder under another ending where `endingFor` says one. What cannot be is
 * refused before anything is computed.
 */
export async function targetsOf(
  inputs: readonly string[],
  output: string | undefined,
  endingFor: (input: string) => string | undefined,
): Promise<Targets> {
  if (output === undefined) return { folder: undefined, of: () => undefined };
  if (output === STANDARD) {
    if (inputs.length > 1) throw new BadUsage("-o - takes one file; several need a folder");
    return { folder: undefined, of: () => STANDARD };
  }
  const found = await stat(output).catch(() => undefined);
  if (inputs.length > 1 && found && !found.isDirectory()) {
    throw new Refused(`${output} is not a folder, which several files need`);
  }
  const isFolder = inputs.length > 1 || found?.isDirectory() === true || /[\\/]$/.test(output);
  if (!isFolder) {
    await refuseSameFile(inputs, output);
    return { folder: undefined, of: () => output };
  }
  const targets = new Map<string, string>();
  for (const input of inputs) {
    const target = join(output, nameIn(output, input, endingFor(input)));
    for (const [other, taken] of targets) {
      if (taken !== target) continue;
      throw new Refused(`${other} and ${input} would both become ${target}`);
    }
    await refuseSameFile(inputs, target);
    targets.set(input, target);
  }
  return { folder: output, of: (input) => targets.get(input) };
}

/** A file's name in a folder of results. */
function nameIn(folder: string, input: string, ending: string | undefined): string {
  if (input === STANDARD) {
    throw new BadUsage(`standard input has no name to go by in ${folder}; -o needs a file`);
  }
  const name = basename(input);
  return ending === undefined ? name : `${basename(name, extname(name))}.${ending}`;
}

/** Makes a folder for results, with those around it, unless it is there. */
export async function makeFolder(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true }).catch((error: unknown) => {
    throw new Refused(`${folder} cannot be made: ${reasonOf(error)}`);
  });
}

/** The kind in which a result is written: what its name says, or as its file came. */
export function kindFor(target: string, came: Kind, csv: boolean): Kind {
  const ending = endingOf(target);
  if (isText(ending)) return ending;
  if (csv) return "csv";
  if (!isText(came)) return came;
  return ending === "" ? came : "xlsx";
}

/** Refuses, before anything is computed, to write what does not fit its name or cannot be written there. */
export async function checkTarget(target: string, kind: Kind, screen: boolean): Promise<void> {
  if (target === STANDARD) {
    if (screen && !isText(kind)) {
      throw new Refused(
        "a workbook is nothing for a screen; -o - needs a pipe or a file behind it",
      );
    }
    return;
  }
  await checkOutput(target);
  const reason = misfit(target, kind);
  if (reason !== undefined) throw new Refused(`${target} cannot be written: ${reason}`);
}
