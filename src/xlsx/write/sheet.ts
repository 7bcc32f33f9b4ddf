import type {
  ICellData,
  IColumnData,
  IRange,
  IRowData,
  IStyleData,
  IWorkbookData,
  IWorksheetData,
  Nullable,
} from "@univerjs/core";
import { BooleanNumber } from "@univerjs/core";
import type { Area } from "../../formula/address";
import { areaAddress, cellAddress } from "../../formula/address";
import { shiftFormula } from "../../formula/shift";
import { writeXml } from "../package";
import { pointsOfPixels, widthInDigits } from "../units";
import type { FormulaToWrite, SharedStrings, Value } from "./cells";
import { valueOf, writeCell } from "./cells";
import { mainNamespace, relationshipNamespace } from "./namespaces";
import type { StyleSheet } from "./styles";
import { argb } from "./styles";

/** What the writer asks of the open workbook beside what it saves. */
export interface SheetContents {
  /** The value a cell shows, also where it only shows another one's spill. */
  readonly read: (address: string) => Value;
  /** The cells that a cell's formula spills over, its own among them. */
  readonly spill: (address: string) => Area | undefined;
}

type Cells = Record<number, Record<number, ICellData>>;

/** The height in pixels that programs give a row on their own. */
const usualHeight = 20;

/** Writes one worksheet's part; `drawing` is the relationship that leads to its pictures. */
export function writeSheet(
  sheet: Partial<IWorksheetData>,
  { styles, defaultStyle }: Pick<IWorkbookData, "styles" | "defaultStyle">,
  contents: SheetContents,
  styleSheet: StyleSheet,
  strings: SharedStrings,
  { selected, drawing }: { readonly selected: boolean; readonly drawing?: string },
): string {
  const cells = copyOf((sheet.cellData ?? {}) as Cells);
  const rowData = (sheet.rowData ?? {}) as Record<number, Partial<IRowData>>;
  const columnData = (sheet.columnData ?? {}) as Record<number, Partial<IColumnData>>;
  const shared = findShared(cells);
  const spilled = new Map<string, Value>();
  const looks = new Map<string, number>();

  const lookUp = (style: Nullable<IStyleData | string>): IStyleData =>
    (typeof style === "string" ? styles[style] : style) ?? {};
  const ofSheet = { ...lookUp(defaultStyle), ...lookUp(sheet.defaultStyle) };

  function look(row: number, column: number): number {
    const layers = [columnData[column]?.s, rowData[row]?.s, cells[row]?.[column]?.s];
    const key = JSON.stringify(layers);
    const known = looks.get(key);
    if (known !== undefined) return known;
    const found = styleSheet.numberOf(Object.assign({}, ofSheet, ...layers.map(lookUp)));
    looks.set(key, found);
    return found;
  }

  function formulaAt(row: number, column: number): FormulaToWrite | undefined {
    const text = formulaOf(cells[row]?.[column], row, column, shared);
    if (text === undefined) return undefined;
    const own = { startRow: row, startColumn: column, endRow: row, endColumn: column };
    const address = cellAddress(row, column);
    // A result that found no room takes up its own cell only.
    const area = contents.read(address) === "#SPILL!" ? undefined : contents.spill(address);
    return { text, area: area ?? own };
  }

  /** Notes the values that a formula shows in other cells, which come after it. */
  function noteSpill({ startRow, startColumn, endRow, endColumn }: Area): void {
    for (let row = startRow; row <= endRow; row++) {
      for (let column = startColumn; column <= endColumn; column++) {
        const address = cellAddress(row, column);
        spilled.set(address, contents.read(address));
        if (!cells[row]?.[column]) (cells[row] ??= {})[column] = {};
      }
    }
  }

  function writeRow(row: number): string {
    const written = numbersOf(cells[row] ?? {}).map((column) => {
      const address = cellAddress(row, column);
      const formula = formulaAt(row, column);
      const isSpilled = !formula && spilled.has(address);
      const value = formula
        ? contents.read(address)
        : isSpilled
          ? spilled.get(address)!
          : valueOf(cells[row][column]);
      const cell = { row, column, look: look(row, column), value, formula, spilled: isSpilled };
      return writeCell(cell, strings);
    });
    const attributes = rowAttributes(rowData[row] ?? {}, (style) =>
      styleSheet.numberOf({ ...ofSheet, ...lookUp(style) }),
    );
    const empty = written.join("") === "" && Object.keys(attributes).length === 0;
    return empty ? "" : writeXml("row", { r: row + 1, ...attributes }, written);
  }

  for (const row of numbersOf(cells)) {
    for (const column of numbersOf(cells[row])) {
      const formula = formulaAt(row, column);
      if (formula) noteSpill(formula.area);
    }
  }
  const rows = [...new Set([...numbersOf(cells), ...numbersOf(rowData)])].sort((a, b) => a - b);
  const merges = (sheet.mergeData ?? []).filter(isSeveralCells);
  const namespaces = { xmlns: mainNamespace, ...(drawing && { "xmlns:r": relationshipNamespace }) };
  return writeXml("worksheet", namespaces, [
    writeProperties(sheet),
    writeView(sheet, selected),
    writeFormat(sheet),
    writeColumns(columnData, (style) => styleSheet.numberOf({ ...ofSheet, ...lookUp(style) })),
    writeXml("sheetData", {}, rows.map(writeRow)),
    merges.length === 0
      ? ""
      : writeXml(
          "mergeCells",
          { count: merges.length },
          merges.map((range) => writeXml("mergeCell", { ref: areaAddress(range) })),
        ),
    writeXml("pageMargins", {
      ...{ left: 0.5, right: 0.5, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 },
    }),
    writeXml("pageSetup", { orientation: orientationOf(cells, sheet), fitToHeight: 0 }),
    drawing ? writeXml("drawing", { "r:id": drawing }) : "",
  ]);
}

function copyOf(cells: Cells): Cells {
  return Object.fromEntries(Object.entries(cells).map(([row, columns]) => [row, { ...columns }]));
}

/** Cells that share a formula name it by an id; one of them holds it. */
function findShared(cells: Cells) {
  const shared = new Map<string, { formula: string; row: number; column: number }>();
  for (const row of numbersOf(cells)) {
    for (const column of numbersOf(cells[row])) {
      const { f, si } = cells[row][column] ?? {};
      if (f && si) shared.set(si, { formula: f, row, column });
    }
  }
  return shared;
}

function formulaOf(
  cell: Nullable<ICellData>,
  row: number,
  column: number,
  shared: ReturnType<typeof findShared>,
): string | undefined {
  if (cell?.f) return cell.f.replace(/^=/, "");
  const origin = cell?.si ? shared.get(cell.si) : undefined;
  return origin && shiftFormula(origin.formula, row - origin.row, column - origin.column).slice(1);
}

function numbersOf(record: Readonly<Record<number, unknown>>): number[] {
  return Object.keys(record)
    .map(Number)
    .sort((a, b) => a - b);
}

function isSeveralCells({ startRow, startColumn, endRow, endColumn }: IRange): boolean {
  return endRow > startRow || endColumn > startColumn;
}

function writeProperties({ tabColor }: Partial<IWorksheetData>): string {
  const rgb = argb(tabColor);
  return writeXml("sheetPr", {}, [
    rgb ? writeXml("tabColor", { rgb }) : "",
    writeXml("pageSetUpPr", { fitToPage: 1 }),
  ]);
}

function writeView(sheet: Partial<IWorksheetData>, selected: boolean): string {
  const attributes = {
    showGridLines: sheet.showGridlines === BooleanNumber.FALSE ? 0 : undefined,
    rightToLeft: sheet.rightToLeft === BooleanNumber.TRUE ? 1 : undefined,
    tabSelected: selected ? 1 : undefined,
    workbookViewId: 0,
  };
  const { xSplit = 0, ySplit = 0 } = sheet.freeze ?? {};
  if (xSplit <= 0 && ySplit <= 0) {
    return writeXml("sheetViews", {}, writeXml("sheetView", attributes));
  }
  const active = xSplit > 0 ? (ySplit > 0 ? "bottomRight" : "topRight") : "bottomLeft";
  const pane = {
    xSplit: xSplit > 0 ? xSplit : undefined,
    ySplit: ySplit > 0 ? ySplit : undefined,
    topLeftCell: cellAddress(Math.max(0, ySplit), Math.max(0, xSplit)),
    activePane: active,
    state: "frozen",
  };
  const inside = [writeXml("pane", pane), writeXml("selection", { pane: active })];
  return writeXml("sheetViews", {}, writeXml("sheetView", attributes, inside));
}

function writeFormat({ defaultColumnWidth, defaultRowHeight }: Partial<IWorksheetData>): string {
  const height = defaultRowHeight ?? usualHeight;
  return writeXml("sheetFormatPr", {
    defaultColWidth:
      defaultColumnWidth === undefined ? undefined : widthInDigits(defaultColumnWidth),
    defaultRowHeight: pointsOfPixels(height),
    customHeight: height === usualHeight ? undefined : 1,
  });
}

function writeColumns(
  columnData: Readonly<Record<number, Partial<IColumnData>>>,
  look: (style: Nullable<IStyleData | string>) => number,
): string {
  const columns = numbersOf(columnData).flatMap((column) => {
    const { w, hd, s } = columnData[column] ?? {};
    const style = s ? look(s) : 0;
    if (w === undefined && hd !== BooleanNumber.TRUE && style === 0) return [];
    const attributes = {
      min: column + 1,
      max: column + 1,
      width: widthInDigits(w ?? 64),
      style: style > 0 ? style : undefined,
      hidden: hd === BooleanNumber.TRUE ? 1 : undefined,
      customWidth: 1,
    };
    return writeXml("col", attributes);
  });
  return columns.length > 0 ? writeXml("cols", {}, columns) : "";
}

function rowAttributes(
  { h, ah, ia, hd, s }: Partial<IRowData>,
  look: (style: Nullable<IStyleData | string>) => number,
): Record<string, number> {
  const fits = ia === BooleanNumber.TRUE;
  const pixels = fits ? ah : h;
  const style = s ? look(s) : 0;
  return {
    ...(style > 0 && { s: style, customFormat: 1 }),
    ...(pixels !== undefined && { ht: pointsOfPixels(pixels) }),
    ...(hd === BooleanNumber.TRUE && { hidden: 1 }),
    ...(pixels !== undefined && !fits && { customHeight: 1 }),
  };
}

/** A sheet that is broader than a page is high is printed lying down. */
function orientationOf(cells: Cells, sheet: Partial<IWorksheetData>): "landscape" | "portrait" {
  const columns = Math.max(
    0,
    ...numbersOf(cells).flatMap((row) => numbersOf(cells[row]).at(-1) ?? 0),
  );
  const widths = (sheet.columnData ?? {}) as Record<number, Partial<IColumnData>>;
  const usual = sheet.defaultColumnWidth ?? 64;
  let width = 0;
  for (let column = 0; column <= columns; column++) width += widths[column]?.w ?? usual;
  return width > 900 ? "landscape" : "portrait";
}
