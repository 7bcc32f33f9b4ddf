import { randomUUID } from "node:crypto";
import { rmSync } from "node:fs";
import { chmod, lstat, realpath, rename, rm, stat, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { reasonOf } from "./files";
import { Refused } from "./problem";

/** Where a result goes: the file itself, behind any links, and its permissions if it is there already. */
interface Target {
  readonly path: string;
  readonly mode: number | undefined;
}

/** Refuses to write what is not a file, or not to be written: asked before anything is computed. */
export async function checkOutput(path: string): Promise<Target> {
  const found = await stat(path).catch(unlessMissing(path));
  if (!found) {
    const link = await lstat(path).catch(() => undefined);
    if (link) throw cannotWrite(path, "it is a link that leads nowhere");
    return { path, mode: undefined };
  }
  if (found.isDirectory()) throw cannotWrite(path, "it is a folder");
  if (!found.isFile()) throw cannotWrite(path, "it is not a file");
  if ((found.mode & 0o222) === 0) throw cannotWrite(path, "the file can only be read");
  return { path: await realpath(path), mode: found.mode & 0o7777 };
}

/**
 * Writes a file as a whole or not at all: into one beside it, which then takes its name. A file that was there keeps
 * its permissions, and a link to it stays a link. Whoever ends the program meanwhile leaves nothing behind, but for
 * an end that no program hears of, after which the file beside it may stay.
 */
export async function writeOutput(path: string, bytes: Uint8Array): Promise<void> {
  const target = await checkOutput(path);
  // The whole name is the system's to judge, so this one does not make it any longer.
  const temporary = join(dirname(target.path), `.spare-${randomUUID()}.tmp`);
  const stopListening = onEnd(() => rmSync(temporary, { force: true }));
  try {
    await writeFile(temporary, bytes, { flag: "wx" });
    if (target.mode !== undefined) await chmod(temporary, target.mode);
    await rename(temporary, target.path);
  } catch (error) {
    await rm(temporary, { force: true });
    throw cannotWrite(path, reasonOf(error));
  } finally {
    stopListening();
  }
}

/** The signals that ask a program to end, with the status that shells expect of it. */
const ENDINGS = { SIGINT: 130, SIGTERM: 143, SIGHUP: 129 } as const;

/** Does something before the program ends by a signal; says how to take that back. */
export function onEnd(tidy: () => void): () => void {
  const listeners = Object.entries(ENDINGS).map(([signal, status]) => {
    const listener = () => {
      tidy();
      process.exit(status);
    };
    process.on(signal, listener);
    return () => process.off(signal, listener);
  });
  return () => listeners.forEach((stop) => stop());
}

const cannotWrite = (path: string, reason: string) =>
  new Refused(`${path} cannot be written: ${reason}`);

/** A file that is not there can be made, unless its name alone cannot. */
const unlessMissing = (path: string) => (error: unknown) => {
  const isMissing = error instanceof Error && "code" in error && error.code === "ENOENT";
  if (!isMissing) throw cannotWrite(path, reasonOf(error));
  return undefined;
};
