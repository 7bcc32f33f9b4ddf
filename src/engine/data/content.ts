import type { ICellData } from "@univerjs/core";
import { CellValueType } from "@univerjs/core";
import type { CellValue } from "../../xlsx/model";

/** A value as the engine keeps it in a cell; nothing for a blank one. */
export function contentData(value: CellValue): ICellData | undefined {
  if (value === null) return undefined;
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  if (typeof value === "number") return { v: value, t: CellValueType.NUMBER };
  // The engine takes a cell that holds "" for one that was cleared, unless its text is meant.
  return { v: value, t: value === "" ? CellValueType.FORCE_STRING : CellValueType.STRING };
}

/** What stands in a cell of the engine's that holds no formula. */
export function contentModel(cell: ICellData): CellValue {
  const value = cell.v ?? richText(cell);
  if (value === null) return null;
  if (cell.t === CellValueType.BOOLEAN) return value === true || Number(value) === 1;
  if (cell.t === CellValueType.NUMBER && typeof value !== "number") {
    return Number.isFinite(Number(value)) ? Number(value) : String(value);
  }
  const isText = cell.t === CellValueType.STRING || cell.t === CellValueType.FORCE_STRING;
  return isText ? String(value) : value;
}

/** Text that was typed over several lines is kept as a document, which ends each with a return. */
function richText({ p }: ICellData): string | null {
  const stream = p?.body?.dataStream;
  return stream === undefined ? null : stream.replace(/\r?\n$/, "").replace(/\r/g, "\n");
}
