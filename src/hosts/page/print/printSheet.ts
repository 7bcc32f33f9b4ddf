import "./print.css";
import type { IRange } from "@univerjs/core";
import type { FWorksheet } from "@univerjs/sheets/facade";
import type { PageWorkbook } from "../spreadsheet";
import { pictureElement, picturesOn } from "./printPictures";
import { printedRange } from "./printRange";
import { tableOf } from "./printTable";

/** What A4 and Letter both have in pixels, within margins of a centimetre. */
const PAGE = { short: 718, long: 978 };

/** Smaller than this nobody reads it, and the sheet takes more pages instead. */
const SMALLEST_SCALE = 0.45;

/** What the sheet's name above the table takes of the page. */
const HEADING_HEIGHT = 40;

/** More frozen rows than these would leave no room below them. */
const MOST_REPEATED = 12;

/**
 * Prints the sheet that is shown, whoever asks for it: our button, Ctrl+P or the browser's menu. The
 * spreadsheet draws only the cells on the screen, so for paper there is a plain table with the
 * pictures over it, made when printing begins and gone when it is over.
 */
export function printOnRequest(workbook: PageWorkbook): void {
  window.addEventListener("beforeprint", () => prepare(workbook));
  window.addEventListener("afterprint", () => document.querySelector("#print")?.remove());
}

/** Opens the browser's own dialog, once every picture is decoded: else it would be blank on paper. */
export async function printSheet(workbook: PageWorkbook): Promise<void> {
  const view = prepare(workbook);
  await Promise.allSettled([...view.querySelectorAll("img")].map((image) => image.decode()));
  window.print();
}

function prepare(workbook: PageWorkbook): HTMLElement {
  document.querySelector("#print")?.remove();
  const view = viewOf(workbook);
  document.body.append(view);
  return view;
}

/** The sheet as large as fits the page's width, and where possible its height. */
function viewOf(workbook: PageWorkbook): HTMLElement {
  const sheet = workbook.api.getActiveWorkbook()!.getActiveSheet();
  const view = document.createElement("section");
  view.id = "print";
  const range = printedRange(workbook, sheet);
  const pictures = picturesOn(workbook, sheet.getSheetId());
  const cells = sizeOf(sheet, range);
  const size = {
    width: Math.max(cells.width, ...pictures.map(({ box }) => box.left + box.width)),
    height: Math.max(cells.height, ...pictures.map(({ box }) => box.top + box.height)),
  };
  const content = document.createElement("div");
  content.className = "sheet";
  content.style.minHeight = `${size.height}px`;
  // A head that is printed again would push the rows away from under the pictures.
  const frozen = pictures.length > 0 ? 0 : sheet.getFrozenRows();
  const repeated = frozen <= MOST_REPEATED ? frozen : 0;
  content.append(tableOf(sheet, range, repeated), ...pictures.map(pictureElement));
  view.append(caption(sheet.getSheetName()), content);

  const landscape = size.width > size.height && size.width > PAGE.short;
  const width = landscape ? PAGE.long : PAGE.short;
  const height = (landscape ? PAGE.short : PAGE.long) - HEADING_HEIGHT;
  const ofWidth = Math.min(1, width / size.width);
  const ofPage = Math.min(ofWidth, height / size.height);
  view.style.setProperty("--scale", String(ofPage >= SMALLEST_SCALE ? ofPage : ofWidth));

  const paper = document.createElement("style");
  paper.textContent = `@page { size: ${landscape ? "landscape" : "portrait"}; margin: 10mm; }`;
  view.append(paper);
  return view;
}

function caption(name: string): HTMLElement {
  const heading = document.createElement("h2");
  heading.textContent = name;
  return heading;
}

function sizeOf(sheet: FWorksheet, { endRow, endColumn }: IRange) {
  let width = 0;
  let height = 0;
  const core = sheet.getSheet();
  for (let column = 0; column <= endColumn; column++) {
    if (core.getColVisible(column)) width += sheet.getColumnWidth(column);
  }
  for (let row = 0; row <= endRow; row++) {
    if (core.getRowVisible(row)) height += sheet.getRowHeight(row);
  }
  return { width, height };
}
