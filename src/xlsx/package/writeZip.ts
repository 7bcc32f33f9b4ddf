import { deflateSync } from "fflate";
import { checkSum } from "./checkSum";

/** Packs bytes by the method "deflate", without a head of its own (RFC 1951). */
export type Deflate = (bytes: Uint8Array) => Uint8Array;

const ownDeflate: Deflate = (bytes) => deflateSync(bytes, { level: 6 });

const SIGNATURE = { end: 0x06054b50, entry: 0x02014b50, file: 0x04034b50 };

/** What an archive of ours says of every file: version 2.0, names in UTF-8, the earliest date there is. */
const VERSION = 20;
const NAMES_ARE_UTF8 = 0x0800;
const FIRST_OF_1980 = 0x0021;

const STORED = 0;
const DEFLATED = 8;

interface PackedFile {
  readonly name: Uint8Array;
  readonly method: number;
  readonly check: number;
  readonly size: number;
  readonly packed: Uint8Array;
}

/**
 * Packs files into a zip archive, in their order, the same bytes for the same files. Node's own deflate is
 * several times as fast as the one that also runs in a browser, so a program may bring its own.
 */
export function writeZip(
  files: ReadonlyMap<string, Uint8Array>,
  deflate: Deflate = ownDeflate,
): Uint8Array {
  const encoder = new TextEncoder();
  const packedFiles = [...files].map(([path, bytes]): PackedFile => {
    const smaller = deflate(bytes);
    const worth = smaller.length < bytes.length;
    return {
      name: encoder.encode(path),
      method: worth ? DEFLATED : STORED,
      check: checkSum(bytes),
      size: bytes.length,
      packed: worth ? smaller : bytes,
    };
  });
  const ofFiles = packedFiles.reduce(
    (sum, { name, packed }) => sum + 30 + name.length + packed.length,
    0,
  );
  const ofDirectory = packedFiles.reduce((sum, { name }) => sum + 46 + name.length, 0);
  const archive = new Uint8Array(ofFiles + ofDirectory + 22);
  const view = new DataView(archive.buffer);
  let at = 0;
  let entryAt = ofFiles;
  for (const file of packedFiles) {
    const { name, packed } = file;
    view.setUint32(entryAt, SIGNATURE.entry, true);
    view.setUint16(entryAt + 4, VERSION, true);
    writeFacts(view, entryAt + 6, file);
    view.setUint32(entryAt + 42, at, true);
    archive.set(name, entryAt + 46);
    entryAt += 46 + name.length;

    view.setUint32(at, SIGNATURE.file, true);
    writeFacts(view, at + 4, file);
    archive.set(name, at + 30);
    archive.set(packed, at + 30 + name.length);
    at += 30 + name.length + packed.length;
  }
  view.setUint32(entryAt, SIGNATURE.end, true);
  view.setUint16(entryAt + 8, packedFiles.length, true);
  view.setUint16(entryAt + 10, packedFiles.length, true);
  view.setUint32(entryAt + 12, ofDirectory, true);
  view.setUint32(entryAt + 16, ofFiles, true);
  return archive;
}

/** What stands of a file both before it and in the archive's directory, in 26 bytes. */
function writeFacts(view: DataView, at: number, { name, method, check, size, packed }: PackedFile) {
  view.setUint16(at, VERSION, true);
  view.setUint16(at + 2, NAMES_ARE_UTF8, true);
  view.setUint16(at + 4, method, true);
  view.setUint16(at + 8, FIRST_OF_1980, true);
  view.setUint32(at + 10, check, true);
  view.setUint32(at + 14, packed.length, true);
  view.setUint32(at + 18, size, true);
  view.setUint16(at + 22, name.length, true);
}
