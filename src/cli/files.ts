import { readFile, stat } from "node:fs/promises";
import { deflateRawSync, inflateRawSync } from "node:zlib";
import { UnreadableFile } from "../xlsx/package";
import { BadUsage } from "./arguments";

/** Larger files are not workbooks that anybody keeps, and would not fit into memory twice. */
const LARGEST = 512 * 1024 * 1024;

/** Node's own deflate and inflate, by far the fastest here. What would become more than it says is refused. */
export const deflate = deflateRawSync;
export const inflate = (packed: Uint8Array, size: number): Uint8Array =>
  // Room for one byte more than that shows whether there is more.
  inflateRawSync(packed, { maxOutputLength: size + 1, chunkSize: Math.max(64, size + 1) });

/** A file's bytes, or an `UnreadableFile` that says why there are none. */
export async function readInput(path: string): Promise<Uint8Array> {
  try {
    const found = await stat(path);
    // A device or a pipe may never come to its end.
    if (!found.isFile() && !found.isDirectory()) throw new UnreadableFile("it is not a file");
    if (found.size > LARGEST) throw new UnreadableFile("the file is larger than 512 MB");
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

/** Why the system could not, in a person's words. */
export function reasonOf(error: unknown): string {
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
  EDQUOT: "the disk is full",
  EFBIG: "the file is larger than allowed",
  EIO: "the disk does not answer",
  ELOOP: "its links lead in a circle",
  ENAMETOOLONG: "the name is too long",
  EEXIST: "there is a file of that name",
};
