import { randomUUID } from "node:crypto";
import { chmod, readFile, realpath, rename, rm, stat, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { UnreadableFile } from "../xlsx/package";
import { BadUsage } from "./arguments";

/** Larger files are not workbooks that anybody keeps, and would not fit into memory twice. */
const LARGEST = 512 * 1024 * 1024;

/** A file's bytes, or an `UnreadableFile` that says why there are none. */
export async function readInput(path: string): Promise<Uint8Array> {
  try {
    const { size } = await stat(path);
    if (size > LARGEST) throw new UnreadableFile("the file is larger than 512 MB");
    return new Uint8Array(await readFile(path));
  } catch (error) {
    if (error instanceof UnreadableFile) throw error;
    throw new UnreadableFile(reasonOf(error));
  }
}

/** Refuses to write over the workbook that is read, under whatever name. */
export async function refuseSameFile(input: string, output: string): Promise<void> {
  const [from, to] = await Promise.all([identityOf(input), identityOf(output)]);
  if (from !== undefined && from === to) {
    throw new BadUsage(
      `${output} is the workbook itself; it is written over with --in-place alone`,
    );
  }
}

/** Two names lead to one file where its place on the disk is the same. */
async function identityOf(path: string): Promise<string | undefined> {
  try {
    const { dev, ino } = await stat(path);
    return `${dev} ${ino}`;
  } catch {
    return undefined;
  }
}

/**
 * Writes a file as a whole or not at all: into one beside it, which then takes its name. A file that
 * was there keeps its permissions, and a link to it stays a link.
 */
export async function writeOutput(path: string, bytes: Uint8Array): Promise<void> {
  const target = await realpath(path).catch(() => path);
  const mode = await stat(target).then(
    (found) => found.mode & 0o7777,
    () => undefined,
  );
  const temporary = join(dirname(target), `.${basename(target)}.${randomUUID()}.tmp`);
  try {
    await writeFile(temporary, bytes, { flag: "wx" });
    if (mode !== undefined) await chmod(temporary, mode);
    await rename(temporary, target);
  } catch (error) {
    await rm(temporary, { force: true });
    throw new BadUsage(`${path} cannot be written: ${reasonOf(error)}`);
  }
}

function reasonOf(error: unknown): string {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder",
  ENOTDIR: "there is no such folder",
  EISDIR: "it is a folder",
  EACCES: "permission is denied",
  EPERM: "permission is denied",
  EROFS: "the disk can only be read",
  ENOSPC: "the disk is full",
};
