import { readFileSync, statSync } from "node:fs";
import type { IncomingMessage, ServerResponse } from "node:http";
import { extname } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import { fileFor } from "./serveRefusals";

/** What gets smaller, and the type it is served as. */
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".webmanifest": "application/manifest+json",
  ".txt": "text/plain; charset=utf-8",
  ".svg": "image/svg+xml",
};

/** Smaller files travel in one piece anyhow. */
const SMALLEST = 1024;

/** A quarter of a second for the largest file, and a quarter of its size. */
const QUALITY = { params: { [constants.BROTLI_PARAM_QUALITY]: 5 } };

const encodings = {
  br: (bytes: Buffer) => brotliCompressSync(bytes, QUALITY),
  gzip: (bytes: Buffer) => gzipSync(bytes),
};

/** Answers with a file of the folder, compressed, where the browser takes that; says whether it did. */
export function serveCompressed(folder: string) {
  const kept = new Map<string, { readonly tag: string; readonly bytes: Buffer }>();

  return ({ url = "/", headers, method }: IncomingMessage, response: ServerResponse): boolean => {
    const accepted = String(headers["accept-encoding"] ?? "");
    const encoding = (["br", "gzip"] as const).find((name) => accepted.includes(name));
    const file = fileFor(folder, url);
    if (!encoding || !file || file === "outside" || headers.range !== undefined) return false;
    const type = TYPES[extname(file)];
    const { size, mtimeMs } = statSync(file);
    if (type === undefined || size < SMALLEST) return false;

    const tag = `W/"${size}-${Math.round(mtimeMs)}-${encoding}"`;
    response.setHeader("Vary", "Accept-Encoding");
    response.setHeader("ETag", tag);
    response.setHeader("Cache-Control", "no-cache");
    if (headers["if-none-match"] === tag) {
      response.writeHead(304).end();
      return true;
    }
    const key = `${file} ${encoding}`;
    if (kept.get(key)?.tag !== tag) {
      kept.set(key, { tag, bytes: encodings[encoding](readFileSync(file)) });
    }
    const { bytes } = kept.get(key)!;
    response.writeHead(200, {
      "Content-Type": type,
      "Content-Encoding": encoding,
      "Content-Length": bytes.length,
    });
    response.end(method === "HEAD" ? undefined : bytes);
    return true;
  };
}
