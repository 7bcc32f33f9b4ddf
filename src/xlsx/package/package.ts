import { UnreadableFile } from "./unreadable";
import type { XmlElement } from "./xml";
import { attributeOf, childrenOf, parseXml } from "./xml";
import type { Deflate } from "./writeZip";
import { writeZip } from "./writeZip";
import type { Inflate } from "./zip";
import { readZip } from "./zip";

/** A workbook's file: its parts as bytes by path ("xl/workbook.xml"), in the order it has them. */
export interface Package {
  readonly parts: Map<string, Uint8Array>;
}

/** Opens a workbook's file, whoever it comes from, or says in an `UnreadableFile` why not; `inflate` as in `readZip`. */
export function readPackage(bytes: Uint8Array, inflate?: Inflate): Package {
  if (bytes.length === 0) throw new UnreadableFile("the file is empty");
  if (startsWith(bytes, COMPOUND_FILE)) throw new UnreadableFile(describeCompoundFile(bytes));
  if (startsWith(bytes, OLD_SPREADSHEET)) throw new UnreadableFile(OLD_FORMAT);
  if (!startsWith(bytes, ZIP_ARCHIVE)) {
    throw new UnreadableFile("the file is not an .xlsx workbook");
  }
  const file: Package = { parts: readZip(bytes, inflate) };
  findWorkbook(file);
  return file;
}

/** Packs the parts into a file; `deflate` may be the platform's own. */
export function writePackage({ parts }: Package, deflate?: Deflate): Uint8Array {
  return writeZip(parts, deflate);
}

const ZIP_ARCHIVE = [0x50, 0x4b];
/** Excel's format before 2007, and any file with a password, come in this container. */
const COMPOUND_FILE = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];
/** The still older format without a container: a record 09, whose length follows. */
const OLD_SPREADSHEET = [0x09];
const OLD_FORMAT = "the file is an .xls workbook; save it as .xlsx first";

function startsWith(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, index) => bytes[index] === byte);
}

/** The container's directory names its contents in 16-bit characters. */
function describeCompoundFile(bytes: Uint8Array): string {
  const text = new TextDecoder("latin1").decode(bytes).replaceAll("\0", "");
  if (text.includes("EncryptedPackage")) return "the file is protected with a password";
  if (/Workbook|Book/.test(text)) return OLD_FORMAT;
  return "the file is not an .xlsx workbook";
}

/** A part's path as the package itself writes it: parts are named without regard to case. */
export const pathIn = ({ parts }: Package, path: string): string =>
  parts.has(path) ? path : (namesOf(parts).get(path.toLowerCase()) ?? path);

/** A package's paths by what they are in small letters; a package is not changed once it is read. */
function namesOf(parts: Package["parts"]): ReadonlyMap<string, string> {
  let names = NAMES.get(parts);
  if (!names) {
    // Of two that differ in case alone the first counts.
    names = new Map([...parts.keys()].reverse().map((name) => [name.toLowerCase(), name]));
    NAMES.set(parts, names);
  }
  return names;
}

const NAMES = new WeakMap<Package["parts"], ReadonlyMap<string, string>>();

/** A part's bytes. */
export const partAt = (file: Package, path: string): Uint8Array | undefined =>
  file.parts.get(pathIn(file, path));

/** What is said of a part that the package refers to and does not have. */
export const missing = (path: string): UnreadableFile =>
  new UnreadableFile(`the file is damaged: "${path}" is missing`);

/** A part's text; a byte order mark is not part of it. */
export function textAt(file: Package, path: string): string {
  const bytes = partAt(file, path);
  if (!bytes) throw missing(path);
  try {
    return new TextDecoder(encodingOf(bytes), { fatal: true }).decode(bytes);
  } catch {
    throw new UnreadableFile(`"${path}" is not text in the encoding it names`);
  }
}

/** Text is UTF-8 unless a byte order mark or the declaration says otherwise. */
function encodingOf(bytes: Uint8Array): string {
  if (startsWith(bytes, [0xff, 0xfe])) return "utf-16le";
  if (startsWith(bytes, [0xfe, 0xff])) return "utf-16be";
  const start = new TextDecoder("latin1").decode(bytes.subarray(0, 200));
  return /^[^<]*<\?xml[^>]*\bencoding=["']([\w.-]+)["']/.exec(start)?.[1] ?? "utf-8";
}

/** A part's XML; see `parseXml` for `streamed` and `visit`. */
export function xmlAt(
  file: Package,
  path: string,
  streamed?: string,
  visit?: (element: XmlElement) => void,
): XmlElement {
  return parseXml(textAt(file, path), path, streamed, visit);
}

/** The path of the part that says what the part at this path refers to. */
export function relationshipsPath(path: string): string {
  const slash = path.lastIndexOf("/") + 1;
  return `${path.slice(0, slash)}_rels/${path.slice(slash)}.rels`;
}

/** What a part refers to. */
export interface Relationship {
  readonly id: string;
  /** The last word of its type: "worksheet", "sharedStrings". */
  readonly type: string;
  /** The path of the part it leads to, or the address outside the file. */
  readonly target: string;
  readonly external: boolean;
}

/** What the part at this path refers to; the path "" is the file itself. */
export function relationshipsOf(file: Package, path: string): Relationship[] {
  const written = relationshipsPath(path);
  if (!partAt(file, written)) return [];
  const folder = path.slice(0, path.lastIndexOf("/") + 1);
  return childrenOf(xmlAt(file, written), "Relationship").map((element) => {
    const external = attributeOf(element, "TargetMode")?.toLowerCase() === "external";
    const target = attributeOf(element, "Target") ?? "";
    return {
      id: attributeOf(element, "Id") ?? "",
      type: /[^/]*$/.exec(attributeOf(element, "Type") ?? "")![0],
      target: external ? target : resolve(folder, target),
      external,
    };
  });
}

/** A target's path from the top of the file; it is written relative to the folder it is named in. */
function resolve(folder: string, target: string): string {
  const segments: string[] = [];
  for (const segment of (target.startsWith("/") ? target : folder + target).split("/")) {
    if (segment === "..") segments.pop();
    else if (segment !== "" && segment !== ".") segments.push(segment);
  }
  return segments.join("/");
}

/** The path of the part that lists the sheets. */
export function findWorkbook(file: Package): string {
  const main = relationshipsOf(file, "").find(({ type }) => type === "officeDocument");
  if (main?.target.endsWith(".bin")) {
    throw new UnreadableFile("the file is an .xlsb workbook; save it as .xlsx first");
  }
  if (!main || !partAt(file, main.target) || !isSpreadsheet(file, main.target)) {
    throw new UnreadableFile("the file is a zip archive, but not an .xlsx workbook");
  }
  return main.target;
}

function isSpreadsheet(file: Package, path: string): boolean {
  return xmlAt(file, path).name === "workbook";
}
