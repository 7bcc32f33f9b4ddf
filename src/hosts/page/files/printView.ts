import type { IBorderStyleData, IRange, IStyleData, Nullable } from "@univerjs/core";
import { BooleanNumber, HorizontalAlign, VerticalAlign, WrapStrategy } from "@univerjs/core";
import type { FWorksheet } from "@univerjs/sheets/facade";
import { cellAddress } from "../../../formula/address";
import type { PageWorkbook } from "../spreadsheet";
import { pictureElement, picturesOn } from "./printPictures";

/** The printable part of a page of A4 in pixels, within margins of a centimetre. */
const page = { short: 718, long: 1047 };

/** Smaller than this nobody reads it, and the sheet takes more pages instead. */
const smallestScale = 0.45;

/**
 * Prints the sheet that is shown: as a plain table with the pictures over it, since the spreadsheet
 * draws only the cells on the screen. It is as large as fits the page's width, and where possible its height.
 */
export async function printSheet(workbook: PageWorkbook): Promise<void> {
  document.querySelector("#print")?.remove();
  const sheet = workbook.api.getActiveWorkbook()!.getActiveSheet();
  const view = document.createElement("section");
  view.id = "print";
  const range = usedRange(workbook, sheet);
  const pictures = picturesOn(workbook, sheet.getSheetId());
  const cells = sizeOf(sheet, range);
  const size = {
    width: Math.max(cells.width, ...pictures.map(({ box }) => box.left + box.width)),
    height: Math.max(cells.height, ...pictures.map(({ box }) => box.top + box.height)),
  };
  const content = document.createElement("div");
  content.className = "sheet";
  content.style.minHeight = `${size.height}px`;
  content.append(tableOf(workbook, sheet, range), ...pictures.map(pictureElement));
  view.append(caption(sheet.getSheetName()), content);

  const landscape = size.width > size.height && size.width > page.short;
  const width = landscape ? page.long : page.short;
  const height = (landscape ? page.short : page.long) - headingHeight;
  const ofWidth = Math.min(1, width / size.width);
  const ofPage = Math.min(ofWidth, height / size.height);
  view.style.setProperty("--scale", String(ofPage >= smallestScale ? ofPage : ofWidth));

  const paper = document.createElement("style");
  paper.textContent = `@page { size: A4 ${landscape ? "landscape" : "portrait"}; margin: 10mm; }`;
  view.append(paper);
  document.body.append(view);
  window.addEventListener("afterprint", () => view.remove(), { once: true });
  // What is not decoded yet would be blank on paper.
  await Promise.allSettled([...view.querySelectorAll("img")].map((image) => image.decode()));
  window.print();
}

/** What the sheet's name above the table takes of the page. */
const headingHeight = 40;

function caption(name: string): HTMLElement {
  const heading = document.createElement("h2");
  heading.textContent = name;
  return heading;
}

/** From the first cell to the last that shows anything, formulas' spills included. */
function usedRange(workbook: PageWorkbook, sheet: FWorksheet): IRange {
  let endRow = 0;
  let endColumn = 0;
  sheet
    .getSheet()
    .getCellMatrix()
    .forValue((row, column, cell) => {
      const isFormula = Boolean(cell?.f ?? cell?.si);
      if (!isFormula && !cell?.p && (cell?.v ?? "") === "") return;
      const address = cellAddress(row, column);
      const spilled = isFormula ? workbook.spill(sheet.getSheetName(), address) : undefined;
      endRow = Math.max(endRow, spilled?.endRow ?? row);
      endColumn = Math.max(endColumn, spilled?.endColumn ?? column);
    });
  return { startRow: 0, startColumn: 0, endRow, endColumn };
}

function sizeOf(sheet: FWorksheet, { endRow, endColumn }: IRange) {
  let width = 0;
  let height = 0;
  for (let column = 0; column <= endColumn; column++) width += sheet.getColumnWidth(column);
  for (let row = 0; row <= endRow; row++) height += sheet.getRowHeight(row);
  return { width, height };
}

function tableOf(workbook: PageWorkbook, sheet: FWorksheet, range: IRange): HTMLTableElement {
  const core = sheet.getSheet();
  const merges = core.getMergeData();
  const table = document.createElement("table");
  const columns = document.createElement("colgroup");
  for (let column = 0; column <= range.endColumn; column++) {
    const element = document.createElement("col");
    element.style.width = `${core.getColVisible(column) ? sheet.getColumnWidth(column) : 0}px`;
    columns.append(element);
  }
  table.append(columns);

  for (let row = 0; row <= range.endRow; row++) {
    if (!core.getRowVisible(row)) continue;
    const line = table.insertRow();
    line.style.height = `${sheet.getRowHeight(row)}px`;
    const texts = sheet.getRange(row, 0, 1, range.endColumn + 1).getDisplayValues()[0];
    for (let column = 0; column <= range.endColumn; column++) {
      const merge = merges.find((candidate) => contains(candidate, row, column));
      const first = !merge || (merge.startRow === row && merge.startColumn === column);
      if (!first) continue;
      const cell = line.insertCell();
      if (merge) {
        cell.rowSpan = merge.endRow - merge.startRow + 1;
        cell.colSpan = Math.min(merge.endColumn, range.endColumn) - merge.startColumn + 1;
      }
      const text = document.createElement("span");
      text.textContent = texts[column];
      cell.append(text);
      const value = workbook.readCell(sheet.getSheetName(), cellAddress(row, column));
      dress(cell, core.getComposedCellStyle(row, column), typeof value === "number");
    }
  }
  return table;
}

function contains(range: IRange, row: number, column: number): boolean {
  return (
    row >= range.startRow &&
    row <= range.endRow &&
    column >= range.startColumn &&
    column <= range.endColumn
  );
}

const horizontal: Partial<Record<HorizontalAlign, string>> = {
  [HorizontalAlign.LEFT]: "left",
  [HorizontalAlign.CENTER]: "center",
  [HorizontalAlign.RIGHT]: "right",
};
const vertical: Partial<Record<VerticalAlign, string>> = {
  [VerticalAlign.TOP]: "top",
  [VerticalAlign.MIDDLE]: "middle",
};

function dress({ style: css }: HTMLElement, style: IStyleData, isNumber: boolean): void {
  const aligned = style.ht ? horizontal[style.ht] : undefined;
  css.textAlign = aligned ?? (isNumber ? "right" : "left");
  css.verticalAlign = (style.vt ? vertical[style.vt] : undefined) ?? "bottom";
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
