import { areaAddress, cellAddress } from "../../formula/address";
import { isError, type CellValue } from "../model";
import { childOf, escapeXml, parseXml } from "../package";
import type { Place, ReadCell } from "../read/rows";
import type { ReadSheet } from "../read/sheet";
import { toFileText } from "../strings";
import type { CellChange, ChangeInRow } from "./changes";
import { applyEdits, type Edit, type Stretch } from "./edits";

/** A worksheet and the text of its part. */
export interface SheetXml extends ReadSheet {
  readonly xml: string;
}

/** The cell's XML with its new value: the tag's `t`, the formula's `ref` and what `<v>` holds. */
export function changedCell(
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

/** The XML of a cell that the sheet does not have. */
export function newCell({ prefix }: SheetXml, row: number, { column, value }: ChangeInRow): string {
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
