import type { ICellData, IStyleData, IWorkbookData, IWorksheetData } from "@univerjs/core";
import { BooleanNumber, LocaleType, WrapStrategy } from "@univerjs/core";
import type { ReadyCell, ReadySheet, ReadyWorkbook, Style } from "../../readySheets";
import { contentData } from "./content";
import { styleData } from "./style";

/** Sheets in our readable language as a workbook of the engine's, nothing computed yet. */
export function readyWorkbookData(
  id: string,
  { name, base, sheets }: ReadyWorkbook,
): IWorkbookData {
  const looks = Object.assign({}, ...sheets.map(([, { styles }]) => styles)) as Record<
    string,
    Style
  >;
  return {
    id,
    name,
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: Object.fromEntries(
      Object.entries(looks).map(([look, style]) => [look, lookData(style)]),
    ),
    defaultStyle: lookData(base),
    sheetOrder: sheets.map(([sheetId]) => sheetId),
    sheets: Object.fromEntries(
      sheets.map(([sheetId, sheet]) => [
        sheetId,
        { id: sheetId, ...readySheetData(sheet, (look) => look) },
      ]),
    ),
  };
}

/** One such sheet for a workbook that has its own styles already: the cells bring theirs along. */
export function loneSheetData(sheet: ReadySheet): Partial<IWorksheetData> {
  const looks = Object.fromEntries(
    Object.entries(sheet.styles).map(([look, style]) => [look, lookData(style)]),
  );
  return readySheetData(sheet, (look) => looks[look]);
}

function readySheetData(
  sheet: ReadySheet,
  styleOf: (look: string) => ICellData["s"],
): Partial<IWorksheetData> {
  const cellData = ({ formula, value, style }: ReadyCell): ICellData => ({
    ...(formula !== undefined ? { f: formula } : contentData(value ?? null)),
    s: styleOf(style),
  });
  return {
    name: sheet.name,
    tabColor: sheet.tab ?? "",
    rowCount: sheet.rowCount,
    columnCount: sheet.columnCount,
    cellData: eachOf(sheet.cells, (row) => eachOf(row, cellData)),
    columnData: eachOf(sheet.widths, (w) => ({ w })),
    rowData: eachOf(sheet.heights, (h) => ({ h, ia: BooleanNumber.FALSE })),
    mergeData: sheet.merged.map((area) => ({ ...area })),
    showGridlines: sheet.gridlines ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    ...(sheet.frozen && { freeze: freezeData(sheet.frozen) }),
  };
}

const freezeData = ({ rows, columns }: NonNullable<ReadySheet["frozen"]>) => ({
  xSplit: columns,
  ySplit: rows,
  startRow: rows,
  startColumn: columns,
});

/** A look in the engine's words. Its indent is told in pixels, where a file's counts steps. */
function lookData({ align, valign, indent, top, bottom, wrap, ...look }: Style): IStyleData {
  const line = (color: string) => ({ style: "thin", color }) as const;
  const borders = { ...(top && { top: line(top) }), ...(bottom && { bottom: line(bottom) }) };
  return {
    ...styleData({
      ...look,
      ...(align && { horizontal: align }),
      ...(valign && { vertical: valign }),
      ...(wrap && { wrap }),
      ...((top ?? bottom) && { borders }),
    }),
    // What takes back the style beneath has to be said.
    ...(wrap === false && { tb: WrapStrategy.OVERFLOW }),
    ...(look.bold === false && { bl: BooleanNumber.FALSE }),
    ...(look.italic === false && { it: BooleanNumber.FALSE }),
    ...(indent && { pd: { l: indent } }),
  };
}

function eachOf<A, B>(
  record: Readonly<Record<number, A>>,
  change: (one: A) => B,
): Record<number, B> {
  return Object.fromEntries(
    Object.entries(record).map(([key, one]): [string, B] => [key, change(one)]),
  );
}
