import { areaAddress, cellAddress, columnNumber } from "../../formula/address";
import { isError, type CellValue } from "../model";
import { childOf, escapeXml, parseXml } from "../package";
import type { Place, ReadCell, ReadRow } from "../read/rows";
import type { ReadSheet } from "../read/sheet";
import { toFileText } from "../strings";
import type { CellChange, ChangeInRow, SheetChanges } from "./changes";
import { applyEdits, type Edit, type Stretch } from "./edits";

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
  const inserted = insertions(sheet, sheet.data, "sheetData", edits);
  let at = 0;
  for (const [row, cells] of changes.rows()) {
    while (at < sheet.rows.length && sheet.rows[at]!.row < row) at++;
    const written = sheet.rows[at];
    if (written?.row === row) editRow(sheet, written, cells, edits);
    else if (cells.some(holdsAnything)) inserted.add(sheet.rows[at - 1], newRow(sheet, row, cells));
  }
  inserted.end();
  widenDimension(sheet, changes, edits);
  return applyEdits(sheet.xml, edits);
}

function editRow(
  sheet: SheetXml,
  row: ReadRow,
  changes: readonly ChangeInRow[],
  edits: Edit[],
): void {
  const inserted = insertions(sheet, row, "row", edits);
  const added: number[] = [];
  let at = 0;
  for (const change of changes) {
    const { column } = change;
    while (at < row.cells.length && row.cells[at]!.column < column) at++;
    const cell = row.cells[at];
    if (cell?.column === column) {
      edits.push({ start: cell.start, end: cell.end, text: changedCell(sheet, cell, change) });
    } else if (change.value !== null) {
      inserted.add(row.cells[at - 1], newCell(sheet, row.row, change));
      added.push(column);
    }
  }
  inserted.end();
  if (added.length > 0) widenSpans(sheet, row, added, edits);
}

/**
 * Puts children into an element, each behind one that it has or first in it, also where it is written `<row/>`.
 * They come in their order: those for one place, which may be a million, are one edit.
 */
function insertions({ xml, prefix }: SheetXml, element: Place, name: string, edits: Edit[]) {
  let place: number | undefined;
  let text = "";
  let pieces: string[] = [];
  return {
    add(after: Stretch | undefined, piece: string): void {
      if (after?.end !== place) this.end();
      place = after?.end;
      // Joined now and then, since many short texts take several times the memory of a long one.
      if (pieces.push(piece) >= PIECES) join();
    },
    end(): void {
      join();
      if (text === "") return;
      const { contentStart } = element;
      if (place !== undefined || xml[contentStart - 2] !== "/") {
        const at = place ?? contentStart;
        edits.push({ start: at, end: at, text });
      } else {
        const filled = `>${text}</${prefix}${name}>`;
        edits.push({ start: contentStart - 2, end: contentStart, text: filled });
      }
      text = "";
    },
  };

  function join(): void {
    text += pieces.join("");
    pieces = [];
  }
}

const PIECES = 10_000;

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

function newRow(sheet: SheetXml, row: number, changes: readonly ChangeInRow[]): string {
  const cells = changes.filter(holdsAnything).map((change) => newCell(sheet, row, change));
  const { prefix } = sheet;
  return `<${prefix}row r="${row + 1}">${cells.join("")}</${prefix}row>`;
}

function newCell({ prefix }: SheetXml, row: number, { column, value }: ChangeInRow): string {
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

const holdsAnything = ({ value }: CellChange) => value !== null;

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
  let startRow = Number(top) - 1;
  let startColumn = columnNumber(left);
  let endRow = Number(bottom) - 1;
  let endColumn = columnNumber(right);
  for (const [row, cells] of changes.rows()) {
    for (const { column, value } of cells) {
      if (value === null) continue;
      startRow = Math.min(startRow, row);
      startColumn = Math.min(startColumn, column);
      endRow = Math.max(endRow, row);
      endColumn = Math.max(endColumn, column);
    }
  }
  const start = dimension.start + match.index;
  const text = before + areaAddress({ startRow, startColumn, endRow, endColumn });
  const unchanged = text === all || text === `${before}${left}${top}:${right}${bottom}`;
  if (!unchanged) edits.push({ start, end: start + all.length, text });
}
