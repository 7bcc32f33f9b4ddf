import type { IBorderStyleData, IRange, IStyleData, Nullable, Worksheet } from "@univerjs/core";
import {
  BooleanNumber,
  CellValueType,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import { FontCache, getFontStyleString } from "@univerjs/preset-sheets-core";
import type { FWorksheet } from "@univerjs/sheets/facade";
import { fitNumber } from "../numbers/fitNumber";

/** One cell as it is printed. */
interface Cell {
  readonly text: string;
  readonly isNumber: boolean;
  readonly style: IStyleData;
  /** Columns and rows that it is merged over. */
  readonly span: { readonly columns: number; readonly rows: number };
}

/**
 * The cells of a sheet as a table. Frozen rows are its head, which the browser repeats on every page;
 * `repeated` says how many there are.
 */
export function tableOf(sheet: FWorksheet, range: IRange, repeated: number): HTMLTableElement {
  const core = sheet.getSheet();
  const widths = Array.from({ length: range.endColumn + 1 }, (_, column) =>
    core.getColVisible(column) ? sheet.getColumnWidth(column) : 0,
  );
  const merges = mergesOf(core);
  const table = document.createElement("table");
  const columns = document.createElement("colgroup");
  for (const width of widths) {
    const column = document.createElement("col");
    column.style.width = `${width}px`;
    columns.append(column);
  }
  table.append(columns);
  const head = repeated > 0 ? table.createTHead() : undefined;
  const body = table.createTBody();

  for (let row = 0; row <= range.endRow; row++) {
    if (!core.getRowVisible(row)) continue;
    const line = (row < repeated && head ? head : body).insertRow();
    line.style.height = `${sheet.getRowHeight(row)}px`;
    const cells = cellsOf(sheet, row, range.endColumn, merges);
    cells.forEach((cell, column) => {
      if (cell) line.append(elementOf(cell, column, cells, widths));
    });
  }
  return table;
}

/** A row's cells; nothing where one that is merged reaches over. */
function cellsOf(
  sheet: FWorksheet,
  row: number,
  endColumn: number,
  merges: ReadonlyMap<string, IRange>,
): (Cell | undefined)[] {
  const core = sheet.getSheet();
  const [texts = []] = sheet.getRange(row, 0, 1, endColumn + 1).getDisplayValues();
  return texts.map((text, column) => {
    const merge = merges.get(`${row} ${column}`);
    if (merge && (merge.startRow !== row || merge.startColumn !== column)) return undefined;
    return {
      text,
      isNumber: core.getCell(row, column)?.t === CellValueType.NUMBER,
      style: core.getComposedCellStyle(row, column),
      span: {
        rows: merge ? merge.endRow - row + 1 : 1,
        columns: merge ? Math.min(merge.endColumn, endColumn) - column + 1 : 1,
      },
    };
  });
}

/** The merged range that each merged cell lies in, by its row and column. */
function mergesOf(sheet: Worksheet): Map<string, IRange> {
  const merges = new Map<string, IRange>();
  for (const merge of sheet.getMergeData()) {
    for (let row = merge.startRow; row <= merge.endRow; row++) {
      for (let column = merge.startColumn; column <= merge.endColumn; column++) {
        merges.set(`${row} ${column}`, merge);
      }
    }
  }
  return merges;
}

const PADDING = 3;

function elementOf(
  cell: Cell,
  column: number,
  cells: readonly (Cell | undefined)[],
  widths: readonly number[],
): HTMLTableCellElement {
  const { style, span } = cell;
  const element = document.createElement("td");
  element.colSpan = span.columns;
  element.rowSpan = span.rows;
  dress(element, cell);
  const text = document.createElement("span");
  const own = sum(widths.slice(column, column + span.columns)) - 2 * PADDING;
  if (cell.isNumber) {
    const font = getFontStyleString(style).fontCache;
    text.textContent = fitNumber(
      cell.text,
      own,
      (part) => FontCache.getMeasureText(part, font).width,
    );
  } else {
    text.textContent = cell.text;
    if (style.tb !== WrapStrategy.WRAP)
      limit(text, cell, own, roomBeside(cell, column, cells, widths));
  }
  element.append(text);
  return element;
}

/** What a text may use of empty cells to its left and right before it would lie over another. */
function roomBeside(
  cell: Cell,
  column: number,
  cells: readonly (Cell | undefined)[],
  widths: readonly number[],
): { left: number; right: number } {
  const isFree = (at: number) => cells[at]?.text === "" && cells[at].span.columns === 1;
  if (cell.span.columns > 1 || cell.style.tb === WrapStrategy.CLIP) return { left: 0, right: 0 };
  // The space beside the text is its own as well, before any of it is cut.
  let left = PADDING;
  let right = PADDING;
  for (let at = column + 1; at < cells.length && isFree(at); at++) right += widths[at] ?? 0;
  // Past the last printed column there is paper and nothing else.
  if (cells.slice(column + 1).every((other) => other?.text === "")) right += 400;
  for (let at = column - 1; at >= 0 && isFree(at); at--) left += widths[at] ?? 0;
  return { left, right };
}

/** Smaller than this share of its size no text is printed; the rest of it is cut. */
const SMALLEST_SHARE = 0.7;

/** Makes a text smaller where it needs more room than it has. */
function limit(
  element: HTMLElement,
  { text, style }: Cell,
  own: number,
  { left, right }: { left: number; right: number },
): void {
  const { style: css } = element;
  const both = 2 * Math.min(left, right);
  let room = own + right;
  if (style.ht === HorizontalAlign.RIGHT) {
    room = own + left;
    css.marginLeft = `${-left}px`;
  } else if (style.ht === HorizontalAlign.CENTER) {
    room = own + both;
    css.marginLeft = css.marginRight = `${-both / 2}px`;
  }
  css.maxWidth = `${room}px`;
  const needed = FontCache.getMeasureText(text, getFontStyleString(style).fontCache).width;
  // The printer's letters are a little wider or narrower than the screen's.
  const share = (0.97 * room) / needed;
  if (share < 1) css.fontSize = `${Math.max(share, SMALLEST_SHARE) * 100}%`;
}

const HORIZONTAL: Partial<Record<HorizontalAlign, string>> = {
  [HorizontalAlign.LEFT]: "left",
  [HorizontalAlign.CENTER]: "center",
  [HorizontalAlign.RIGHT]: "right",
};
const VERTICAL: Partial<Record<VerticalAlign, string>> = {
  [VerticalAlign.TOP]: "top",
  [VerticalAlign.MIDDLE]: "middle",
};

function dress({ style: css }: HTMLElement, { style, isNumber }: Cell): void {
  const aligned = style.ht ? HORIZONTAL[style.ht] : undefined;
  css.textAlign = aligned ?? (isNumber ? "right" : "left");
  css.verticalAlign = (style.vt ? VERTICAL[style.vt] : undefined) ?? "bottom";
  if (style.ff) css.fontFamily = style.ff;
  if (style.fs) css.fontSize = `${style.fs}pt`;
  if (style.bl === BooleanNumber.TRUE) css.fontWeight = "bold";
  if (style.it === BooleanNumber.TRUE) css.fontStyle = "italic";
  if (style.cl?.rgb) css.color = style.cl.rgb;
  if (style.bg?.rgb) css.backgroundColor = style.bg.rgb;
  if (style.tb === WrapStrategy.WRAP) css.whiteSpace = "pre-wrap";
  if (style.pd?.l) css.paddingLeft = `${style.pd.l}px`;
  css.borderTop = line(style.bd?.t);
  css.borderBottom = line(style.bd?.b);
  css.borderLeft = line(style.bd?.l);
  css.borderRight = line(style.bd?.r);
}

function line(border: Nullable<IBorderStyleData>): string {
  return border ? `1px solid ${border.cl?.rgb ?? "#000"}` : "";
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0);
