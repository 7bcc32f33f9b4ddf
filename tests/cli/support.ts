import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { deflate, inflate } from "../../src/cli/files";
import { run } from "../../src/cli/run";
import type { Report } from "../../src/cli/report";
import { parseCell } from "../../src/formula/address";
import { bookOf } from "../../src/recalculate/book";
import { readPackage, readWorkbook, writePackage } from "../../src/xlsx";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006";
const packageNames = "http://schemas.openxmlformats.org/package/2006";
const declaration = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\r\n`;

/** What a workbook of a test is made of: XML as some program wrote it, by sheet and by part. */
export interface BookParts {
  /** By sheet name: what is inside `<sheetData>`, or a whole worksheet. */
  readonly sheets: Readonly<Record<string, string>>;
  /** What stands between the list of sheets and the end of the workbook's part. */
  readonly workbook?: string;
  readonly properties?: string;
  /** More parts by path, each with its content type. */
  readonly parts?: Readonly<Record<string, readonly [content: string | Uint8Array, type: string]>>;
  /** More references, by the part they come from: type and target. */
  readonly references?: Readonly<Record<string, readonly (readonly [string, string])[]>>;
}

const metadata =
  `<metadata xmlns="${main}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray">` +
  `<metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" ` +
  `pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" ` +
  `clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes>` +
  `<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}">` +
  `<xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>` +
  `<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

export const worksheet = (data: string, after = "", before = "") =>
  `${declaration}<worksheet xmlns="${main}" xmlns:r="${office}/relationships">${before}` +
  `<sheetData>${data}</sheetData>${after}</worksheet>`;

/** A workbook's file, put together from XML. */
export function buildBook(book: BookParts): Uint8Array {
  const text = (xml: string) => new TextEncoder().encode(xml);
  const parts = new Map<string, Uint8Array>();
  const names = Object.keys(book.sheets);
  const spreadsheet = "application/vnd.openxmlformats-officedocument.spreadsheetml";
  const references = new Map<string, (readonly [string, string])[]>([
    [
      "xl/workbook.xml",
      names.map((_, index) => ["worksheet", `/xl/worksheets/sheet${index + 1}.xml`]),
    ],
  ]);
  references.set("", [["officeDocument", "/xl/workbook.xml"]]);
  references.get("xl/workbook.xml")!.push(["sheetMetadata", "/xl/metadata.xml"]);
  for (const [from, more] of Object.entries(book.references ?? {})) {
    references.set(from, [...(references.get(from) ?? []), ...more]);
  }
  const types = [
    ["xl/workbook.xml", `${spreadsheet}.sheet.main+xml`],
    ["xl/metadata.xml", `${spreadsheet}.sheetMetadata+xml`],
    ...names.map((_, index) => [
      `xl/worksheets/sheet${index + 1}.xml`,
      `${spreadsheet}.worksheet+xml`,
    ]),
    ...Object.entries(book.parts ?? {}).map(([path, [, type]]) => [path, type]),
  ];
  const overrides = types.map(
    ([path, type]) => `<Override PartName="/${path}" ContentType="${type}"/>`,
  );
  parts.set(
    "[Content_Types].xml",
    text(
      `${declaration}<Types xmlns="${packageNames}/content-types">` +
        `<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
        `<Default Extension="xml" ContentType="application/xml"/>${overrides.join("")}</Types>`,
    ),
  );
  const listed = names.map(
    (name, index) =>
      `<sheet name="${name.replaceAll("&", "&amp;")}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`,
  );
  parts.set(
    "xl/workbook.xml",
    text(
      `${declaration}<workbook xmlns="${main}" xmlns:r="${office}/relationships">${book.properties ?? ""}` +
        `<sheets>${listed.join("")}</sheets>${book.workbook ?? ""}</workbook>`,
    ),
  );
  parts.set("xl/metadata.xml", text(declaration + metadata));
  Object.values(book.sheets).forEach((xml, index) => {
    const whole = xml.includes("<worksheet") || xml.includes(":worksheet") ? xml : worksheet(xml);
    parts.set(`xl/worksheets/sheet${index + 1}.xml`, text(whole));
  });
  for (const [path, [content]] of Object.entries(book.parts ?? {})) {
    parts.set(path, typeof content === "string" ? text(content) : content);
  }
  for (const [from, list] of references) {
    const slash = from.lastIndexOf("/") + 1;
    parts.set(
      `${from.slice(0, slash)}_rels/${from.slice(slash)}.rels`,
      text(relationshipsXml(list)),
    );
  }
  return writePackage({ parts }, deflate);
}

function relationshipsXml(list: readonly (readonly [string, string])[]): string {
  const entries = list.map(([type, target], index) => {
    const kind = type.includes(":") ? type : `${office}/relationships/${type}`;
    return `<Relationship Id="rId${index + 1}" Type="${kind}" Target="${target}"/>`;
  });
  return `${declaration}<Relationships xmlns="${packageNames}/relationships">${entries.join("")}</Relationships>`;
}

/** A folder of a test's own, with files in it, that goes when the test is over. */
export function workFolder() {
  const folder = mkdtempSync(join(tmpdir(), "spare-"));
  return {
    path: (name: string) => join(folder, name),
    put(name: string, bytes: Uint8Array | string): string {
      writeFileSync(join(folder, name), bytes);
      return join(folder, name);
    },
    bytes: (name: string) => new Uint8Array(readFileSync(join(folder, name))),
    names: () => readdirSync(folder).sort(),
    remove() {
      rmSync(folder, { recursive: true });
    },
  };
}

/** Runs a command line and catches what it prints. */
export const spare = (...args: readonly string[]) => spareWith(new Uint8Array(), ...args);

/** The same with something on its standard input; `bytes` is all of its standard output, also where it is no text. */
export async function spareWith(standardInput: Uint8Array | string, ...args: readonly string[]) {
  const out: Uint8Array[] = [];
  const err: string[] = [];
  const encoder = new TextEncoder();
  const status = await run(args, {
    in: Readable.from([Buffer.from(standardInput)]),
    out: { write: (piece) => out.push(typeof piece === "string" ? encoder.encode(piece) : piece) },
    err: { write: (text) => err.push(text) },
  });
  const bytes = new Uint8Array(Buffer.concat(out));
  return { status, out: new TextDecoder().decode(bytes), err: err.join(""), bytes };
}

/** Calculates a workbook to `out.xlsx` and gives the report. */
export async function calcToFile(
  folder: ReturnType<typeof workFolder>,
  book: BookParts | Uint8Array,
): Promise<Report> {
  const input = folder.put("book.xlsx", book instanceof Uint8Array ? book : buildBook(book));
  const { out, err } = await spare("calc", input, "-o", folder.path("out.xlsx"), "--json");
  if (err !== "") throw new Error(err);
  return JSON.parse(out) as Report;
}

/** Looks into a workbook's file: what it holds in a cell, and the text of a part. */
export function lookAt(bytes: Uint8Array) {
  const file = readPackage(bytes, inflate);
  const book = bookOf(readWorkbook(file));
  return {
    parts: file.parts,
    text: (path: string) => new TextDecoder().decode(file.parts.get(path)),
    value(sheet: string, address: string) {
      const { row, column } = parseCell(address)!;
      const found = book.sheets.find(({ name }) => name === sheet)!;
      return found.cellAt(row, column)?.value ?? null;
    },
    formulas: book.formulas,
  };
}
