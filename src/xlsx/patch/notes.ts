import { parseCell } from "../../formula/address";
import {
  attributeOf,
  childOf,
  childrenOf,
  escapeXml,
  parseXml,
  partAt,
  relationshipsOf,
  relationshipsPath,
  textAt,
  writeXml,
  type Package,
} from "../package";
import { withChange, withText } from "./editPackage";
import { applyEdits, type Edit } from "./edits";
import { toFileText } from "../strings";

/** What is to be noted on the cells of one sheet, by address. */
export type Notes = ReadonlyMap<string, string>;

/** The author whom our notes name. */
const AUTHOR = "Reps to Spare";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const RELATIONSHIPS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const VML_TYPE = "application/vnd.openxmlformats-officedocument.vmlDrawing";
const COMMENTS_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml";

/**
 * Adds notes to cells of a sheet. Notes that are there stay; one on a cell that gets another has
 * the new one written below it. A note's text is kept in one part, its box on the sheet in another.
 */
export function addNotes(file: Package, sheetPath: string, notes: Notes): Package {
  if (notes.size === 0) return file;
  const related = relationshipsOf(file, sheetPath);
  const comments = related.find(({ type }) => type === "comments")?.target;
  const drawingId = drawingOf(file, sheetPath);
  const drawing = related.find(({ id }) => id === drawingId);
  const taken = comments === undefined ? new Set<string>() : notedCells(file, comments);
  const boxes = [...notes.keys()].filter((address) => !taken.has(address));
  const withTexts =
    comments === undefined
      ? addComments(file, sheetPath, notes)
      : withChange(file, comments, (xml) => extendComments(xml, comments, notes));
  if (boxes.length === 0) return withTexts;
  return drawing === undefined
    ? addDrawing(withTexts, sheetPath, boxes)
    : withChange(withTexts, drawing.target, (xml) => extendDrawing(xml, boxes));
}

/** The id by which a sheet names its drawing of boxes; the one in its header is another. */
function drawingOf(file: Package, sheetPath: string): string | undefined {
  const tag = /<(?:[\w.-]+:)?legacyDrawing\s[^>]*/.exec(textAt(file, sheetPath))?.[0] ?? "";
  return /:id\s*=\s*["']([^"']*)/.exec(tag)?.[1];
}

function notedCells(file: Package, path: string): Set<string> {
  const list = childOf(parseXml(textAt(file, path), path), "commentList");
  return new Set(childrenOf(list, "comment").map((note) => attributeOf(note, "ref") ?? ""));
}

function addComments(file: Package, sheetPath: string, notes: Notes): Package {
  const path = freePath(file, "xl/comments", ".xml");
  const list = [...notes].map(([address, text]) => writeNote("", address, 0, text));
  const xml =
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n` +
    writeXml("comments", { xmlns: MAIN }, [
      writeXml("authors", {}, writeXml("author", {}, AUTHOR)),
      writeXml("commentList", {}, list),
    ]);
  const typed = addContentType(
    withText(file, path, xml),
    writeXml("Override", { PartName: `/${path}`, ContentType: COMMENTS_TYPE }),
  );
  return relate(typed, sheetPath, "comments", path).file;
}

function writeNote(prefix: string, address: string, authorId: number, text: string): string {
  const content = writeXml(`${prefix}text`, {}, writeRun(prefix, text));
  return writeXml(`${prefix}comment`, { ref: address, authorId }, content);
}

function writeRun(prefix: string, text: string): string {
  const content = escapeXml(toFileText(text)).replaceAll("&#10;", "\n");
  const plain = `<${prefix}t xml:space="preserve">${content}</${prefix}t>`;
  return writeXml(`${prefix}r`, {}, plain);
}

function extendComments(xml: string, path: string, notes: Notes): string {
  const root = parseXml(xml, path);
  const prefix = /^<([\w.-]+:)?/.exec(xml.slice(root.start))?.[1] ?? "";
  const authors = childOf(root, "authors");
  const list = childOf(root, "commentList");
  if (!authors || !list) return xml;
  const names = childrenOf(authors, "author");
  const known = names.findIndex(({ text }) => text === AUTHOR);
  const edits: Edit[] = [];
  if (known < 0) edits.push(append(xml, authors, prefix, writeXml(`${prefix}author`, {}, AUTHOR)));
  const authorId = known < 0 ? names.length : known;
  const there = new Map(
    childrenOf(list, "comment").map((note) => [attributeOf(note, "ref"), note]),
  );
  const added: string[] = [];
  for (const [address, text] of notes) {
    const body = childOf(there.get(address), "text");
    if (!body) added.push(writeNote(prefix, address, authorId, text));
    else edits.push(...belowNote(xml, body, prefix, text));
  }
  if (added.length > 0) edits.push(append(xml, list, prefix, added.join("")));
  return applyEdits(xml, edits);
}

/** A note that is one plain text becomes the first of two runs. */
function belowNote(
  xml: string,
  body: ReturnType<typeof parseXml>,
  prefix: string,
  text: string,
): Edit[] {
  const plain = childOf(body, "t");
  if (!plain) return [append(xml, body, prefix, writeRun(prefix, `\n${text}`))];
  const { start, end } = plain;
  const first = writeXml(`${prefix}r`, {}, xml.slice(start, end));
  return [{ start, end, text: first + writeRun(prefix, `\n${text}`) }];
}

/** Puts XML last in an element, also where that is written `<authors/>`. */
function append(
  xml: string,
  { start, end, contentStart }: { start: number; end: number; contentStart: number },
  prefix: string,
  text: string,
): Edit {
  if (xml[contentStart - 2] !== "/") {
    const at = xml.lastIndexOf("<", end - 1);
    return { start: at, end: at, text };
  }
  const name = /^<(?:[\w.-]+:)?([\w.-]+)/.exec(xml.slice(start))![1];
  return { start: end - 2, end, text: `>${text}</${prefix}${name}>` };
}

function addDrawing(file: Package, sheetPath: string, addresses: readonly string[]): Package {
  const path = freePath(file, "xl/drawings/vmlDrawing", ".vml");
  const empty =
    `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" ` +
    `xmlns:x="urn:schemas-microsoft-com:office:excel"><o:shapelayout v:ext="edit">` +
    `<o:idmap v:ext="edit" data="1"/></o:shapelayout></xml>`;
  const drawn = addContentType(
    withText(file, path, extendDrawing(empty, addresses)),
    writeXml("Default", { Extension: "vml", ContentType: VML_TYPE }),
    /\bExtension="vml"/i,
  );
  const related = relate(drawn, sheetPath, "vmlDrawing", path);
  return withChange(related.file, sheetPath, (xml) => nameDrawing(xml, sheetPath, related.id));
}

/** What may stand behind the drawing of boxes in a worksheet. */
const AFTER_DRAWING = [
  "legacyDrawingHF",
  "drawingHF",
  "picture",
  "oleObjects",
  "controls",
  "webPublishItems",
  "tableParts",
  "extLst",
];

function nameDrawing(xml: string, path: string, id: string): string {
  const root = parseXml(xml, path, "row", () => undefined);
  const prefix = /^<([\w.-]+:)?/.exec(xml.slice(root.start))?.[1] ?? "";
  const next = root.children.find(({ name }) => AFTER_DRAWING.includes(name));
  const at = next?.start ?? xml.lastIndexOf("<", root.end - 1);
  const element = writeXml(`${prefix}legacyDrawing`, { "xmlns:r": RELATIONSHIPS, "r:id": id });
  return xml.slice(0, at) + element + xml.slice(at);
}

const SHAPE_TYPE =
  `<v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" ` +
  `path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/>` +
  `<v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>`;

/** Adds a hidden box beside each cell, in the manner of Excel. */
function extendDrawing(xml: string, addresses: readonly string[]): string {
  const used = [...xml.matchAll(/_x0000_s(\d+)/g)].map(([, id]) => Number(id));
  const first = used.reduce((one, other) => Math.max(one, other), 1024) + 1;
  const type = xml.includes('id="_x0000_t202"') ? "" : SHAPE_TYPE;
  const shapes = addresses.map((address, index) => writeBox(address, first + index));
  const end = xml.lastIndexOf("</xml>");
  return end < 0 ? xml : xml.slice(0, end) + type + shapes.join("") + xml.slice(end);
}

function writeBox(address: string, id: number): string {
  const { row, column } = parseCell(address) ?? { row: 0, column: 0 };
  const top = Math.max(0, row - 1);
  const anchor = [column + 1, 15, top, 2, column + 4, 15, top + 4, 4].join(", ");
  return (
    `<v:shape id="_x0000_s${id}" type="#_x0000_t202" style="position:absolute;visibility:hidden" ` +
    `fillcolor="#ffffe1" o:insetmode="auto"><v:fill color2="#ffffe1"/>` +
    `<v:shadow color="black" obscured="t"/><v:path o:connecttype="none"/>` +
    `<v:textbox style="mso-direction-alt:auto"><div style="text-align:left"/></v:textbox>` +
    `<x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/>` +
    `<x:Anchor>${anchor}</x:Anchor><x:AutoFill>False</x:AutoFill>` +
    `<x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`
  );
}

/** The first path of a series, "xl/comments1.xml", that no part has. */
function freePath(file: Package, start: string, end: string): string {
  let number = 1;
  while (partAt(file, `${start}${number}${end}`)) number++;
  return `${start}${number}${end}`;
}

function addContentType(file: Package, entry: string, unless?: RegExp): Package {
  return withChange(file, "[Content_Types].xml", (xml) => {
    if (unless?.test(xml)) return xml;
    const own = entry.startsWith("<Default") ? /(<(?:[\w.-]+:)?Types\b[^>]*>)/ : undefined;
    const prefix = /<([\w.-]+:)Types\b/.exec(xml)?.[1] ?? "";
    const prefixed = entry.replace("<", `<${prefix}`);
    if (own) return xml.replace(own, (opened) => opened + prefixed);
    const close = xml.lastIndexOf("</");
    return xml.slice(0, close) + prefixed + xml.slice(close);
  });
}

/** Lets a part refer to another; gives the reference's id. */
function relate(file: Package, from: string, type: string, to: string) {
  const path = relationshipsPath(from);
  const taken = new Set(relationshipsOf(file, from).map(({ id }) => id));
  let number = 1;
  while (taken.has(`rId${number}`)) number++;
  const id = `rId${number}`;
  const entry = writeXml("Relationship", {
    Id: id,
    Type: `${RELATIONSHIPS}/${type}`,
    Target: `/${to}`,
  });
  const empty =
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n` +
    `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"></Relationships>`;
  const written = partAt(file, path) ? textAt(file, path) : empty;
  const root = parseXml(written, path);
  const prefix = /^<([\w.-]+:)?/.exec(written.slice(root.start))?.[1] ?? "";
  const edit = append(written, root, prefix, entry.replace("<", `<${prefix}`));
  return { id, file: withText(file, path, applyEdits(written, [edit])) };
}
