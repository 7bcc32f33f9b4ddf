import { areaAddress, columnNumber } from "../../formula/address";
import type { Place, ReadRow } from "../read/rows";
import type { ReadSheet } from "../read/sheet";
import type { CellChange, ChangeInRow, SheetChanges } from "./changes";
import { applyEdits, type Edit, type Stretch } from "./edits";
import { changedCell, newCell, type SheetXml } from "./patchCell";

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

function newRow(sheet: SheetXml, row: number, changes: readonly ChangeInRow[]): string {
  const cells = changes.filter(holdsAnything).map((change) => newCell(sheet, row, change));
  const { prefix } = sheet;
  return `<${prefix}row r="${row + 1}">${cells.join("")}</${prefix}row>`;
}

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
