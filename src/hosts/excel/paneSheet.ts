import { areaAddress, type Area } from "../../formula/address";
import type { ReadyCell, ReadyCells, ReadySheet, Style } from "../../readySheets";
import type { Range, Worksheet } from "./paneOffice";
import { styledRectangles } from "./paneRectangles";

/** A screen's pixel in Excel's points. */
const POINTS = 0.75;

const ACROSS = { left: "Left", center: "Center", right: "Right" } as const;
const DOWN = { top: "Top", middle: "Center", bottom: "Bottom" } as const;

/** Writes a ready sheet into an empty one; nothing reaches Excel before the caller's sync. */
export function fillSheet(sheet: Worksheet, ready: ReadySheet): void {
  const at = (area: Area) => sheet.getRange(areaAddress(area));
  sheet.showGridlines = ready.gridlines;
  if (ready.tab !== undefined) sheet.tabColor = ready.tab;
  for (const { style, range } of styledRectangles(ready.cells)) {
    applyStyle(at(range), ready.styles[style] ?? {}, range.endRow > range.startRow);
  }
  for (const [column, width] of Object.entries(ready.widths)) {
    at(oneCell(0, Number(column))).format.columnWidth = width * POINTS;
  }
  for (const [row, height] of Object.entries(ready.heights)) {
    at(oneCell(Number(row), 0)).format.rowHeight = height * POINTS;
  }
  for (const area of ready.merged) at(area).merge();
  writeContents(sheet, ready.cells);
  const { rows, columns } = ready.frozen ?? { rows: 0, columns: 0 };
  if (rows > 0 || columns > 0) sheet.freezePanes.freezeAt(frozen(columns, rows));
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
  return rows === 0 ? areaAddress(range).replaceAll(/\d/g, "") : areaAddress(range);
}

/** A row's contents go in as one; `null` leaves a cell of the row alone. */
function writeContents(sheet: Worksheet, byRow: ReadyCells): void {
  for (const [row, cells] of Object.entries(byRow)) {
    const filled = Object.entries(cells).filter(([, cell]) => contentOf(cell) !== null);
    if (filled.length === 0) continue;
    const columns = filled.map(([column]) => Number(column));
    const startColumn = Math.min(...columns);
    const endColumn = Math.max(...columns);
    const contents = Array.from({ length: endColumn - startColumn + 1 }, (_, index) =>
      contentOf(cells[startColumn + index] ?? {}),
    );
    const range = { startRow: Number(row), endRow: Number(row), startColumn, endColumn };
    sheet.getRange(areaAddress(range)).formulas = [contents];
  }
}

function contentOf({ formula, value }: Partial<ReadyCell>): string | number | boolean | null {
  if (formula !== undefined) return formula;
  if (value === undefined || value === "") return null;
  // Excel would make a date or a formula out of some texts; the apostrophe, which is not shown, forbids it.
  return typeof value === "string" && /^[-\d=+@']/.test(value) ? `'${value}` : value;
}

function applyStyle(range: Range, style: Style, hasRows: boolean): void {
  const { format } = range;
  const { font, fill } = format;
  if (style.format) range.numberFormat = style.format;
  if (style.font) font.name = style.font;
  if (style.size) font.size = style.size;
  if (style.bold !== undefined) font.bold = style.bold;
  if (style.italic !== undefined) font.italic = style.italic;
  if (style.color) font.color = style.color;
  if (style.fill) fill.color = style.fill;
  if (style.align) format.horizontalAlignment = ACROSS[style.align];
  if (style.valign) format.verticalAlignment = DOWN[style.valign];
  if (style.wrap !== undefined) format.wrapText = style.wrap;
  for (const [edge, color] of [
    ["EdgeTop", style.top],
    ["EdgeBottom", style.bottom],
    // Between the rows of a range that looks alike, each row's bottom line is one inside.
    ["InsideHorizontal", hasRows ? style.bottom : undefined],
  ] as const) {
    if (!color) continue;
    const border = format.borders.getItem(edge);
    border.style = "Continuous";
    border.color = color;
  }
}
