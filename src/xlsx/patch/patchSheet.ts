import { areaAddress, cellAddress, columnNumber, type Area } from "../../formula/address";
import { isError, type CellValue } from "../model";
import { childOf, escapeXml, parseXml } from "../package";
import type { Place, ReadCell, ReadRow } from "../read/rows";
import type { ReadSheet } from "../read/sheet";
import { toFileText } from "../strings";

/** What is to change about one cell; what is left out stays as it is. */
export interface CellChange {
  /** The value the file is to keep for it. */
  readonly value: CellValue;
  /** The cells its array formula is to fill. */
  readonly area?: Area;
  /** Another formula in place of its own, or none at all. */
  readonly formula?: string | null;
}

/** The cells to change in one sheet, by row and then by column. */
export type SheetChanges = ReadonlyMap<number, ReadonlyMap<number, CellChange>>;

/** A stretch of a part's text. */
type Stretch = Omit<Place, "contentStart">;

/** A worksheet and the text of its part. */
interface SheetXml extends ReadSheet {
  readonly xml: string;
}

/**
 * A worksheet's XML with some cells changed and everything between them left as it stands, to the
 * character: cells keep their style, their extensions and the order of their attributes.
 */
export function patchSheet(xml: string, read: ReadSheet, changes: SheetChanges): string {
  const sheet: SheetXml = { ...read, xml };
  const edits: Edit[] = [];
  const rows = new Map(sheet.rows.map((row) => [row.row, row]));
  const added: number[] = [];
  for (const [row, cells] of changes) {
    const written = rows.get(row);
    if (written) editRow(sheet, written, cells, edits);
    else if (holdsAnything(cells)) added.push(row);
  }
  for (const row of added.sort((a, b) => a - b)) {
    const after = lastBefore(sheet.rows, (other) => other.row < row);
    const xml = newRow(sheet, row, changes.get(row)!);
    insertInto(sheet, sheet.data, "sheetData", after?.end, xml, edits);
  }
  widenDimension(sheet, changes, edits);
  return applyEdits(sheet.xml, edits);
}

/** A stretch of text and what comes in its place; an insertion is a stretch of no length. */
export interface Edit extends Stretch {
  readonly text: string;
}

/** Makes edits that do not overlap; insertions come before what starts at their place. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  const pieces: string[] = [];
  let at = 0;
  const inOrder = [...edits].sort((one, other) => one.start - other.start || one.end - other.end);
  for (const edit of inOrder) {
    pieces.push(text.slice(at, edit.start), edit.text);
    at = edit.end;
  }
  return pieces.join("") + text.slice(at);
}

function editRow(
  sheet: SheetXml,
  row: ReadRow,
  changes: ReadonlyMap<number, CellChange>,
  edits: Edit[],
): void {
  const cells = new Map(row.cells.map((cell) => [cell.column, cell]));
  const added: number[] = [];
  for (const [column, change] of changes) {
    const cell = cells.get(column);
    if (cell)
      edits.push({ start: cell.start, end: cell.end, text: changedCell(sheet, cell, change) });
    else if (change.value !== null) added.push(column);
  }
  for (const column of added.sort((a, b) => a - b)) {
    const after = lastBefore(row.cells, (cell) => cell.column < column);
    const xml = newCell(sheet, row.row, column, changes.get(column)!);
    insertInto(sheet, row, "row", after?.end, xml, edits);
  }
  if (added.length > 0) widenSpans(sheet, row, added, edits);
}

/** Puts XML behind one child of an element, or first in it, also where it is written `<row/>`. */
function insertInto(
  { xml, prefix }: SheetXml,
  element: Place,
  name: string,
  after: number | undefined,
  text: string,
  edits: Edit[],
): void {
  const at = after ?? element.contentStart;
  if (after !== undefined || xml[element.contentStart - 2] !== "/") {
    edits.push({ start: at, end: at, text });
    return;
  }
  const closing = `</${prefix}${name}>`;
  const slash = element.contentStart - 2;
  const opened = edits.findIndex((edit) => edit.start === slash);
  const edit = edits[opened];
  if (!edit) edits.push({ start: slash, end: slash + 2, text: `>${text}${closing}` });
  else {
    const before = edit.text.slice(0, -closing.length);
    edits[opened] = { ...edit, text: before + text + closing };
  }
}

/** The cell's XML with its new value: the tag's `t`, the formula's `ref` and what `<v>` holds. */
function changedCell(
  sheet: SheetXml,
  { start, end, formula }: ReadCell,
  change: CellChange,
): string {
  const { prefix } = sheet;
  const xml = sheet.xml.slice(start, end);
  const simple = change.area || change.formula !== undefined ? null : PLAIN_CELL.exec(xml);
  if (simple) {
    const [, written = "", formula = ""] = simple;
    const content = formula + writeValue("", change.value);
    return `${openedFor(change.value, written)}${content === "" ? "/>" : `>${content}</c>`}`;
  }
  const cell = parseXml(xml, sheet.path);
  const edits: Edit[] = [];

  const formulaAt = childOf(cell, "f");
  if (formulaAt && change.formula === null) edits.push({ ...stretchOf(formulaAt), text: "" });
  else if (formulaAt && (change.area || change.formula !== undefined)) {
    const shared = formula?.group !== undefined;
    edits.push({ ...stretchOf(formulaAt), text: changedFormula(xml, formulaAt, shared, change) });
  }
  const value = writeValue(prefix, change.value);
  const valueAt = childOf(cell, "v");
  const inlineAt = childOf(cell, "is");
  if (inlineAt) edits.push({ ...stretchOf(inlineAt), text: valueAt ? "" : value });
  if (valueAt) edits.push({ ...stretchOf(valueAt), text: value });
  else if (!inlineAt) {
    const at = formulaAt?.end ?? cell.contentStart;
    edits.push({ start: at, end: at, text: value });
  }
  const content = xml[cell.contentStart - 2] === "/" ? xml.length : xml.lastIndexOf("<");
  const inside = applyEdits(xml.slice(0, content), edits).slice(cell.contentStart);
  const tag = xml.slice(0, cell.contentStart).replace(/\s*\/?>$/, "");
  const unmarked = change.formula === null ? withoutAttribute(tag, "cm") : tag;
  const opened = openedFor(change.value, unmarked);
  return inside === "" ? `${opened}/>` : `${opened}>${inside}</${prefix}c>`;
}

/** A cell as nearly every program writes it, for which no parser need be asked; thousands change at once. */
const PLAIN_CELL =
  /^(<c(?: [a-zA-Z]+="[^"<>]*")*)>(<f(?: [a-zA-Z]+="[^"<>]*")*>[^<]*<\/f>)?(?:<v>[^<]*<\/v>)?<\/c>$/;

/** A cell's opening tag, but for its end, for a value of this type. */
function openedFor(value: CellValue, tag: string): string {
  const type = typeOf(value);
  const plain = /\s(?:t|vm)\s*=/.test(tag)
    ? withoutAttribute(withoutAttribute(tag, "t"), "vm")
    : tag;
  return type === undefined ? plain : `${plain} t="${type}"`;
}

const stretchOf = ({ start, end }: Place): Stretch => ({ start, end });

function changedFormula(
  xml: string,
  { start, contentStart, end }: Place,
  shared: boolean,
  { area, formula: text }: CellChange,
): string {
  const empty = xml[contentStart - 2] === "/";
  const tag = xml.slice(start, contentStart);
  const opened = area
    ? tag.replace(/(\sref\s*=\s*)(["'])[^"']*\2/, `$1$2${areaAddress(area)}$2`)
    : tag;
  if (text === undefined || text === null) return opened + xml.slice(contentStart, end);
  const name = /^<([^\s/>]+)/.exec(tag)![1];
  // A formula of its own is shared no longer.
  if (shared) return `<${name}>${escapeXml(text)}</${name}>`;
  return `${empty ? opened.replace(/\/>$/, ">") : opened}${escapeXml(text)}</${name}>`;
}

function withoutAttribute(tag: string, name: "t" | "vm" | "cm"): string {
  return tag.replace(ATTRIBUTES[name], "");
}

const ATTRIBUTES = {
  t: /\st\s*=\s*(?:"[^"]*"|'[^']*')/,
  vm: /\svm\s*=\s*(?:"[^"]*"|'[^']*')/,
  cm: /\scm\s*=\s*(?:"[^"]*"|'[^']*')/,
};

function newRow(sheet: SheetXml, row: number, changes: ReadonlyMap<number, CellChange>): string {
  const cells = [...changes]
    .filter(([, { value }]) => value !== null)
    .sort(([one], [other]) => one - other)
    .map(([column, change]) => newCell(sheet, row, column, change));
  const { prefix } = sheet;
  return `<${prefix}row r="${row + 1}">${cells.join("")}</${prefix}row>`;
}

function newCell({ prefix }: SheetXml, row: number, column: number, { value }: CellChange): string {
  const type = typeOf(value);
  const typed = type === undefined ? "" : ` t="${type}"`;
  const address = cellAddress(row, column);
  return `<${prefix}c r="${address}"${typed}>${writeValue(prefix, value)}</${prefix}c>`;
}

function typeOf(value: CellValue): string | undefined {
  if (typeof value === "boolean") return "b";
  if (typeof value === "string") return isError(value) ? "e" : "str";
  return undefined;
}

function writeValue(prefix: string, value: CellValue): string {
  if (value === null) return "";
  const spaced = typeof value === "string" && /^\s|\s$/.test(value);
  const space = spaced ? ' xml:space="preserve"' : "";
  return `<${prefix}v${space}>${writeContent(value)}</${prefix}v>`;
}

function writeContent(value: number | string | boolean): string {
  if (typeof value === "boolean") return value ? "1" : "0";
  if (typeof value === "number") return String(value);
  // A result that finds no room is kept as the error of old that programs without spills show.
  if (isError(value)) return KEPT.has(value) ? value : "#VALUE!";
  return escapeXml(toFileText(value));
}

/** The errors that every reader of these files knows. */
const KEPT = new Set(["#N/A", "#VALUE!", "#REF!", "#DIV/0!", "#NUM!", "#NAME?", "#NULL!"]);

const holdsAnything = (cells: ReadonlyMap<number, CellChange>) =>
  [...cells.values()].some(({ value }) => value !== null);

function lastBefore<T>(list: readonly T[], isBefore: (item: T) => boolean): T | undefined {
  let at = list.length - 1;
  let item = list[at];
  while (item !== undefined && !isBefore(item)) item = list[--at];
  return item;
}

/** A row may say which columns it uses. */
function widenSpans({ xml }: SheetXml, row: ReadRow, columns: readonly number[], edits: Edit[]) {
  const tag = xml.slice(row.start, row.contentStart);
  const spans = /(\sspans\s*=\s*["'])(\d+):(\d+)/.exec(tag);
  if (!spans) return;
  const [all, before, first, last] = spans;
  const used = columns.map((column) => column + 1);
  const start = row.start + spans.index;
  const text = `${before}${Math.min(Number(first), ...used)}:${Math.max(Number(last), ...used)}`;
  if (text !== all) edits.push({ start, end: start + all.length, text });
}

/** A sheet may say which cells it uses. */
function widenDimension(sheet: SheetXml, changes: SheetChanges, edits: Edit[]): void {
  const { dimension, xml } = sheet;
  if (!dimension) return;
  const said = /(\sref\s*=\s*["'])([A-Z]+)(\d+)(?::([A-Z]+)(\d+))?(?=["'])/;
  const match = said.exec(xml.slice(dimension.start, dimension.contentStart));
  if (!match) return;
  const [all, before = "", left = "", top, right = left, bottom = top] = match;
  let area: Area = {
    startRow: Number(top) - 1,
    startColumn: columnNumber(left),
    endRow: Number(bottom) - 1,
    endColumn: columnNumber(right),
  };
  for (const [row, cells] of changes) {
    for (const [column, { value }] of cells) {
      if (value === null) continue;
      area = {
        startRow: Math.min(area.startRow, row),
        startColumn: Math.min(area.startColumn, column),
        endRow: Math.max(area.endRow, row),
        endColumn: Math.max(area.endColumn, column),
      };
    }
  }
  const start = dimension.start + match.index;
  const text = before + areaAddress(area);
  const unchanged = text === all || text === `${before}${left}${top}:${right}${bottom}`;
  if (!unchanged) edits.push({ start, end: start + all.length, text });
}
