import { existsSync, realpathSync, statSync } from "node:fs";
import type { IncomingMessage } from "node:http";
import { join, sep } from "node:path";

/** An answer to a request that gets no file. */
export interface Refusal {
  readonly status: number;
  readonly reason: string;
  readonly headers?: Readonly<Record<string, string>>;
}

/** The names this computer has for itself. */
const OURSELVES = /^(?:localhost|127\.0\.0\.1|\[::1\])(?::\d+)?$/i;

/** Why a request gets no file of this folder; nothing where it may have it. */
export function refuse(folder: string, request: IncomingMessage): Refusal | undefined {
  const { method = "", url = "/", headers } = request;
  if (method !== "GET" && method !== "HEAD") {
    return { status: 405, reason: "Only GET and HEAD", headers: { Allow: "GET, HEAD" } };
  }
  // Somebody else's name that leads here would let their page read ours as its own.
  if (!OURSELVES.test(headers.host ?? ""))
    return { status: 403, reason: "Not this computer's name" };
  const file = fileFor(folder, url);
  if (file === "outside" || isHidden(url)) return { status: 404, reason: "Not found" };
  const length = file === undefined ? 0 : statSync(file).size;
  if (headers.range !== undefined && file !== undefined && !isWithin(headers.range, length)) {
    const range = { "Content-Range": `bytes */${length}` };
    return { status: 416, reason: "No such part", headers: range };
  }
  return undefined;
}

/** The file that an address names, if it is one; "outside" where a link leads out of the folder. */
export function fileFor(folder: string, url: string): string | "outside" | undefined {
  let path: string;
  try {
    path = decodeURIComponent(url.replace(/[?#].*$/, ""));
  } catch {
    return "outside";
  }
  if (path.includes("\0")) return "outside";
  const named = join(folder, path.endsWith("/") ? `${path}index.html` : path);
  if (!existsSync(named)) return undefined;
  const real = realpathSync(named);
  if (!real.startsWith(realpathSync(folder) + sep)) return "outside";
  return statSync(real).isFile() ? real : undefined;
}

/** Whether an address names a file that a leading dot hides, which are the build's own. */
function isHidden(url: string): boolean {
  return /\/(\.|%2e)/i.test(url);
}

/** Whether a range of bytes, `bytes=0-99`, `bytes=100-` or `bytes=-5`, is a part of a file. */
function isWithin(range: string, length: number): boolean {
  const [, first, last] = /^bytes=(\d*)-(\d*)$/.exec(range) ?? [];
  if (first === undefined || (first === "" && last === "")) return false;
  if (first === "") return Number(last) > 0 && length > 0;
  return Number(first) < length && (last === "" || Number(last) >= Number(first));
}
