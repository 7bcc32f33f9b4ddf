import { readFile, stat } from "node:fs/promises";
import { deflateRawSync, inflateRawSync } from "node:zlib";
import { UnreadableFile } from "../xlsx/package";
import { Refused } from "./problem";

/** The name that stands for standard input, and for standard output. */
export const STANDARD = "-";

/** Larger files are not workbooks that anybody keeps, and would not fit into memory twice. */
const LARGEST = 512 * 1024 * 1024;
const TOO_LARGE = "the file is larger than 512 MB";

/** Node's own deflate and inflate, by far the fastest here. What would become more than it says is refused. */
export const deflate = deflateRawSync;
export const inflate = (packed: Uint8Array, size: number): Uint8Array =>
  // Room for one byte more than that shows whether there is more.
  inflateRawSync(packed, { maxOutputLength: size + 1, chunkSize: Math.max(64, size + 1) });

/** What comes in pieces: standard input. */
export type Pieces = AsyncIterable<Uint8Array | string>;

/** Refuses what is not a file: a device or a pipe may never come to its end. */
export async function checkInput(path: string): Promise<void> {
  const found = await stat(path).catch((error: unknown) => {
    throw new UnreadableFile(reasonOf(error));
  });
  if (!found.isFile()) throw new UnreadableFile("it is not a file");
}

/** A file's bytes, or those of standard input, or an `UnreadableFile` that says why there are none. */
export async function readInput(path: string, standardInput: Pieces): Promise<Uint8Array> {
  try {
    if (path === STANDARD) return await readPieces(standardInput);
    const found = await stat(path);
    // A device or a pipe may never come to its end.
    if (!found.isFile() && !found.isDirectory()) throw new UnreadableFile("it is not a file");
    if (found.size > LARGEST) throw new UnreadableFile(TOO_LARGE);
    return new Uint8Array(await readFile(path));
  } catch (error) {
    if (error instanceof UnreadableFile) throw error;
    throw new UnreadableFile(reasonOf(error));
  }
}

async function readPieces(pieces: Pieces): Promise<Uint8Array> {
  const read: Uint8Array[] = [];
  let size = 0;
  for await (const piece of pieces) {
    const bytes = typeof piece === "string" ? new TextEncoder().encode(piece) : piece;
    size += bytes.length;
    // Whoever sends without an end is not listened to for long.
    if (size > LARGEST) throw new UnreadableFile(TOO_LARGE);
    read.push(bytes);
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const bytes of read) {
    whole.set(bytes, at);
    at += bytes.length;
  }
  return whole;
}

/** Refuses to write over a workbook that is read, under whatever name. */
export async function refuseSameFile(inputs: readonly string[], output: string): Promise<void> {
  const to = await identityOf(output);
  if (to === undefined) return;
  for (const input of inputs) {
    if ((await identityOf(input)) !== to) continue;
    throw new Refused(
      `${output} is the workbook itself; it is written over with calc --in-place alone`,
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
