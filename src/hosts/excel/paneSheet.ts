import { rangeAddress } from "../../pane/formula/reference";
import type { ReadyCell, ReadySheet, ReadyStyle } from "../../pane/port";
import type { Range, Worksheet } from "./paneOffice";
import { styledRectangles } from "./paneRectangles";

/** A screen's pixel in Excel's points. */
const POINTS = 0.75;

const ACROSS = ["General", "Left", "Center", "Right"];
const DOWN = ["Bottom", "Top", "Center", "Bottom"];
const WRAP = 3;

/** Writes a ready sheet into an empty one; nothing reaches Excel before the caller's sync. */
export function fillSheet(sheet: Worksheet, ready: ReadySheet): void {
  const at = (range: Parameters<typeof rangeAddress>[0]) => sheet.getRange(rangeAddress(range));
  sheet.showGridlines = ready.showGridlines === 1;
  if (ready.tabColor) sheet.tabColor = ready.tabColor;
  for (const { style, range } of styledRectangles(ready.cellData)) {
    applyStyle(at(range), ready.styles[style], range.endRow > range.startRow);
  }
  for (const [column, { w }] of Object.entries(ready.columnData)) {
    at(oneCell(0, Number(column))).format.columnWidth = w * POINTS;
  }
  for (const [row, { h }] of Object.entries(ready.rowData)) {
    at(oneCell(Number(row), 0)).format.rowHeight = h * POINTS;
  }
  for (const range of ready.mergeData) at(range).merge();
  writeContents(sheet, ready.cellData);
  const { xSplit = 0, ySplit = 0 } = ready.freeze ?? {};
  if (xSplit > 0 || ySplit > 0) sheet.freezePanes.freezeAt(frozen(xSplit, ySplit));
}

const oneCell = (row: number, column: number) => ({
  startRow: row,
  endRow: row,
  startColumn: column,
  endColumn: column,
});

/** What stays in sight when so many columns and rows do. */
function frozen(columns: number, rows: number): string {
  if (columns === 0) return `1:${rows}`;
  const range = { ...oneCell(0, 0), endRow: rows - 1, endColumn: columns - 1 };
  return rows === 0 ? rangeAddress(range).replaceAll(/\d/g, "") : rangeAddress(range);
}

/** A row's contents go in as one; `null` leaves a cell of the row alone. */
function writeContents(sheet: Worksheet, cellData: ReadySheet["cellData"]): void {
  for (const [row, cells] of Object.entries(cellData)) {
    const filled = Object.entries(cells).filter(([, cell]) => contentOf(cell) !== null);
    if (filled.length === 0) continue;
    const columns = filled.map(([column]) => Number(column));
    const startColumn = Math.min(...columns);
    const endColumn = Math.max(...columns);
    const contents = Array.from({ length: endColumn - startColumn + 1 }, (_, index) =>
      contentOf(cells[startColumn + index] ?? {}),
    );
    const range = { startRow: Number(row), endRow: Number(row), startColumn, endColumn };
    sheet.getRange(rangeAddress(range)).formulas = [contents];
  }
}

function contentOf({ f, v }: ReadyCell): string | number | boolean | null {
  if (f !== undefined) return f;
  if (v === undefined || v === "") return null;
  // Excel would make a date or a formula out of some texts; the apostrophe, which is not shown, forbids it.
  return typeof v === "string" && /^[-\d=+@']/.test(v) ? `'${v}` : v;
}

function applyStyle(range: Range, style: ReadyStyle, hasRows: boolean): void {
  const { format } = range;
  const { font, fill } = format;
  if (style.n) range.numberFormat = style.n.pattern;
  if (style.ff !== undefined) font.name = style.ff;
  if (style.fs !== undefined) font.size = style.fs;
  if (style.bl !== undefined) font.bold = style.bl === 1;
  if (style.it !== undefined) font.italic = style.it === 1;
  if (style.cl) font.color = style.cl.rgb;
  if (style.bg) fill.color = style.bg.rgb;
  if (style.ht !== undefined) format.horizontalAlignment = ACROSS[style.ht];
  if (style.vt !== undefined) format.verticalAlignment = DOWN[style.vt];
  if (style.tb !== undefined) format.wrapText = style.tb === WRAP;
  for (const [edge, line] of [
    ["EdgeTop", style.bd?.t],
    ["EdgeBottom", style.bd?.b],
    // Between the rows of a range that looks alike, each row's bottom line is one inside.
    ["InsideHorizontal", hasRows ? style.bd?.b : undefined],
  ] as const) {
    if (!line) continue;
    const border = format.borders.getItem(edge);
    border.style = "Continuous";
    border.color = line.cl.rgb;
  }
}
