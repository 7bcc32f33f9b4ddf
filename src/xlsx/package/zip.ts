import { Inflate as Inflating } from "fflate";
import { LIMITS } from "../limits";
import { checkSum } from "./checkSum";
import { UnreadableFile } from "./unreadable";

/*
 * The zip archive around a workbook's parts. The inflating is a library's; the directory is read
 * here, because a file from anywhere has to be held to more than a library checks: that its parts
 * are whole (their check sums), that they stay inside the archive, and that they do not swell to
 * many times what they say.
 */

interface Entry {
  readonly path: string;
  readonly method: number;
  readonly check: number;
  readonly packedSize: number;
  readonly size: number;
  readonly offset: number;
}

const damaged = () => new UnreadableFile("the file is damaged: it is not a whole zip archive");

/**
 * Unpacks what was packed by the method "deflate" into so many bytes (RFC 1951), and throws where it is not that or
 * would become more.
 */
export type Inflate = (packed: Uint8Array, size: number) => Uint8Array;

/**
 * The files in a zip archive by their path, in the archive's own order. Node's own inflate is several times as fast
 * as the one that also runs in a browser, so a program may bring its own.
 */
export function readZip(bytes: Uint8Array, inflate: Inflate = ownInflate): Map<string, Uint8Array> {
  const entries = readDirectory(bytes);
  const total = entries.reduce((sum, { size }) => sum + size, 0);
  const tooLarge = total > LIMITS.size;
  const tooTight = total > LIMITS.harmlessSize && total > LIMITS.ratio * bytes.length;
  if (tooLarge || tooTight) {
    const megabytes = Math.round(total / 1024 / 1024);
    throw new UnreadableFile(`the file unpacks to ${megabytes} MB, which no workbook should`);
  }
  const files = new Map<string, Uint8Array>();
  for (const entry of entries) {
    if (entry.path.endsWith("/")) continue;
    if (files.has(entry.path)) {
      throw new UnreadableFile(`the file is damaged: it holds "${entry.path}" twice`);
    }
    files.set(entry.path, unpack(bytes, entry, inflate));
  }
  return files;
}

const SIGNATURE = { end: 0x06054b50, entry: 0x02014b50, file: 0x04034b50 };

function readDirectory(bytes: Uint8Array): Entry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view);
  const count = view.getUint16(end + 10, true);
  if (count > LIMITS.parts) {
    throw new UnreadableFile(`the file holds ${count} parts, which no workbook does`);
  }
  let at = view.getUint32(end + 16, true);
  const entries: Entry[] = [];
  for (let index = 0; index < count; index++) {
    if (at + 46 > end || view.getUint32(at, true) !== SIGNATURE.entry) throw damaged();
    const flags = view.getUint16(at + 8, true);
    if (flags & 1) throw new UnreadableFile("the file is protected with a password");
    const nameLength = view.getUint16(at + 28, true);
    const extraLength = view.getUint16(at + 30, true);
    const commentLength = view.getUint16(at + 32, true);
    const next = at + 46 + nameLength + extraLength + commentLength;
    if (next > end) throw damaged();
    const extra = new DataView(bytes.buffer, bytes.byteOffset + at + 46 + nameLength, extraLength);
    const [size, packedSize, offset] = widen(extra, [
      view.getUint32(at + 24, true),
      view.getUint32(at + 20, true),
      view.getUint32(at + 42, true),
    ]);
    entries.push({
      path: safePath(new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength))),
      method: view.getUint16(at + 10, true),
      check: view.getUint32(at + 16, true),
      packedSize,
      size,
      offset,
    });
    at = next;
  }
  return entries;
}

/** The record that ends an archive: 22 bytes, and a comment that nearly always is empty. */
function findEnd(view: DataView): number {
  const earliest = Math.max(0, view.byteLength - 22 - 0xffff);
  for (let at = view.byteLength - 22; at >= earliest; at--) {
    if (view.getUint32(at, true) === SIGNATURE.end) return at;
  }
  throw damaged();
}

const DOES_NOT_FIT = 0xffffffff;

type Sizes = readonly [size: number, packedSize: number, offset: number];

/**
 * Programs that write as they go keep an entry's sizes in 64 bits, in an extra field that holds,
 * in this order, those numbers that say of themselves that they do not fit.
 */
function widen(extra: DataView, numbers: Sizes): Sizes {
  if (!numbers.includes(DOES_NOT_FIT)) return numbers;
  for (let at = 0; at + 4 <= extra.byteLength; at += 4 + extra.getUint16(at + 2, true)) {
    if (extra.getUint16(at, true) !== 1) continue;
    let next = at + 4;
    const wide = (number: number) => {
      if (number !== DOES_NOT_FIT) return number;
      if (next + 8 > extra.byteLength) throw damaged();
      next += 8;
      return Number(extra.getBigUint64(next - 8, true));
    };
    const [size, packedSize, offset] = numbers;
    return [wide(size), wide(packedSize), wide(offset)];
  }
  throw damaged();
}

function safePath(written: string): string {
  const path = written.replaceAll("\\", "/");
  const outside = path.startsWith("/") || /^[a-z]:/i.test(path) || path.split("/").includes("..");
  if (outside || path.includes("\0")) {
    throw new UnreadableFile(`the file holds a part outside itself: "${path}"`);
  }
  return path;
}

function unpack(
  bytes: Uint8Array,
  { method, packedSize, ...entry }: Entry,
  inflate: Inflate,
): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const at = entry.offset;
  if (at + 30 > bytes.length || view.getUint32(at, true) !== SIGNATURE.file) throw damaged();
  const start = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  if (start + packedSize > bytes.length) throw damaged();
  const packed = bytes.subarray(start, start + packedSize);
  const stored = method === 0;
  if (!stored && method !== 8) {
    throw new UnreadableFile(`"${entry.path}" is packed in a way no workbook is`);
  }
  const file = stored ? packed.slice() : inflated(packed, entry.size, inflate);
  if (file.length !== entry.size || checkSum(file) !== entry.check) {
    throw new UnreadableFile(`the file is damaged: "${entry.path}" is not what was packed`);
  }
  return file;
}

function inflated(packed: Uint8Array, size: number, inflate: Inflate): Uint8Array {
  try {
    return inflate(packed, size);
  } catch {
    throw damaged();
  }
}

/** Inflates in steps, so that what swells beyond its own word is stopped before it fills memory. */
const ownInflate: Inflate = (packed, size) => {
  const file = new Uint8Array(size);
  let filled = 0;
  const stream = new Inflating((chunk) => {
    if (filled + chunk.length > size) throw damaged();
    file.set(chunk, filled);
    filled += chunk.length;
  });
  const step = 16 * 1024;
  for (let at = 0; at < packed.length || at === 0; at += step) {
    stream.push(packed.subarray(at, at + step), at + step >= packed.length);
  }
  return file.subarray(0, filled);
};
