import { readFileSync, statSync } from "node:fs";
import type { IncomingMessage, ServerResponse } from "node:http";
import { extname } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, brotliCompressSync, constants, gzipSync } from "node:zlib";
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

type Encoding = keyof typeof encodings;

/** Answers for the files of a folder, compressed. */
export interface Compressed {
  /** Answers with a file, where the browser takes it compressed; says whether it did. */
  answer(request: IncomingMessage, response: ServerResponse): boolean;
  /** Compresses some files before anybody asks for them. */
  ahead(names: readonly string[]): Promise<void>;
}

export function serveCompressed(folder: string): Compressed {
  const kept = new Map<string, { readonly tag: string; readonly bytes: Buffer }>();
  const keyOf = (file: string, encoding: Encoding) => `${file} ${encoding}`;

  return {
    answer({ url = "/", headers, method }, response) {
      const accepted = String(headers["accept-encoding"] ?? "");
      const encoding = (["br", "gzip"] as const).find((name) => accepted.includes(name));
      const file = fileFor(folder, url);
      if (!encoding || !file || file === "outside" || headers.range !== undefined) return false;
      const type = TYPES[extname(file)];
      if (type === undefined || statSync(file).size < SMALLEST) return false;

      const tag = tagOf(file, encoding);
      response.setHeader("Vary", "Accept-Encoding");
      response.setHeader("ETag", tag);
      response.setHeader("Cache-Control", "no-cache");
      if (headers["if-none-match"] === tag) {
        response.writeHead(304).end();
        return true;
      }
      const key = keyOf(file, encoding);
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
    },

    async ahead(names) {
      const compress = promisify<Buffer, typeof QUALITY, Buffer>(brotliCompress);
      await Promise.all(
        names.map(async (name) => {
          const file = fileFor(folder, `/${name}`);
          if (!file || file === "outside") return;
          const tag = tagOf(file, "br");
          const bytes = await compress(readFileSync(file), QUALITY);
          kept.set(keyOf(file, "br"), { tag, bytes });
        }),
      );
    },
  };
}

function tagOf(file: string, encoding: Encoding): string {
  const { size, mtimeMs } = statSync(file);
  return `W/"${size}-${Math.round(mtimeMs)}-${encoding}"`;
}
