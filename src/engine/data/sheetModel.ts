import type {
  ICellData,
  IColumnData,
  IRowData,
  IStyleData,
  IWorksheetData,
  Nullable,
} from "@univerjs/core";
import { BooleanNumber } from "@univerjs/core";
import type { Area } from "../../formula/address";
import { areaAddress, cellAddress } from "../../formula/address";
import { needsArray } from "../../formula/arrays";
import { toFile } from "../../formula/future";
import { shiftFormula } from "../../formula/shift";
import type {
  CellModel,
  CellValue,
  ColumnModel,
  FormulaModel,
  RowModel,
  SheetModel,
} from "../../xlsx/model";
import { hexColor } from "./color";
import { contentModel } from "./content";
import type { OpenFilter } from "./filters";
import { columnSize, entriesOf, rowSize } from "./sizes";

/** What a sheet asks of the open workbook beside what that saves. */
export interface SheetContents {
  /** The value a cell shows, also where it only shows another one's spill. */
  readonly read: (address: string) => CellValue;
  /** The cells that a cell's formula spills over, its own among them. */
  readonly spill: (address: string) => Area | undefined;
  /** The sheet's filter, and the rows that it hides. */
  readonly filtered?: OpenFilter;
}

/** A style as a cell, a row or a column of the engine's names it. */
export type NamedStyle = Nullable<IStyleData | string>;

/** The number of the style that layers of styles make, each over the one before it. */
export type StyleNumber = (layers: readonly NamedStyle[]) => number;

type Cells = ReadonlyMap<number, ReadonlyMap<number, ICellData>>;

/** A sheet of the engine's with the values it shows. */
export function sheetModel(
  sheet: Partial<IWorksheetData>,
  contents: SheetContents,
  styleNumber: StyleNumber,
): Omit<SheetModel, "pictures"> {
  const columns = new Map(entriesOf<IColumnData>(sheet.columnData));
  const rows = new Map(entriesOf<IRowData>(sheet.rowData));
  const cells = withSpills(cellsOf(sheet), contents);
  const tab = hexColor(sheet.tabColor);
  const { xSplit = 0, ySplit = 0 } = sheet.freeze ?? {};
  const { filter, hiddenRows = new Set<number>() } = contents.filtered ?? {};
  const numbers = new Set([...cells.keys(), ...rows.keys(), ...hiddenRows]);
  return {
    name: sheet.name ?? "",
    hidden: sheet.hidden === BooleanNumber.TRUE,
    ...(tab && { tab }),
    gridlines: sheet.showGridlines !== BooleanNumber.FALSE,
    rightToLeft: sheet.rightToLeft === BooleanNumber.TRUE,
    ...((xSplit > 0 || ySplit > 0) && { freeze: { rows: ySplit, columns: xSplit } }),
    ...(filter && { filter }),
    merges: (sheet.mergeData ?? []).map(areaOf),
    ...(sheet.defaultColumnWidth !== undefined && { usualWidth: sheet.defaultColumnWidth }),
    ...(sheet.defaultRowHeight !== undefined && { usualHeight: sheet.defaultRowHeight }),
    columns: new Map([...columns].map(([column, data]) => [column, columnModel(data)])),
    rows: [...numbers].sort((one, other) => one - other).map(rowModel),
  };

  function columnModel(data: Partial<IColumnData>): ColumnModel {
    return { ...columnSize(data), ...(data.s && { style: styleNumber([data.s]) }) };
  }

  function rowModel(row: number): RowModel {
    const data = rows.get(row) ?? {};
    const ofRow = [...(cells.get(row) ?? [])].sort(([one], [other]) => one - other);
    return {
      row,
      cells: ofRow.map(([column, { data: cell, value, formula }]): CellModel => {
        const style = styleNumber([columns.get(column)?.s, data.s, cell.s]);
        return { row, column, style, value, ...(formula && { formula }) };
      }),
      ...rowSize(data),
      ...(hiddenRows.has(row) && { hidden: true }),
      ...(data.s && { style: styleNumber([data.s]) }),
    };
  }
}

const areaOf = ({ startRow, startColumn, endRow, endColumn }: Area): Area => ({
  startRow,
  startColumn,
  endRow,
  endColumn,
});

function cellsOf(sheet: Partial<IWorksheetData>): Cells {
  return new Map(
    entriesOf(sheet.cellData).map(([row, ofRow]) => [row, new Map(entriesOf<ICellData>(ofRow))]),
  );
}

/** A cell with what it shows. */
interface ShownCell {
  readonly data: ICellData;
  readonly value: CellValue;
  readonly formula?: FormulaModel;
}

/** The cells with their formulas, and with those that only show what another one's formula spilled. */
function withSpills(cells: Cells, contents: SheetContents): Map<number, Map<number, ShownCell>> {
  const shared = findShared(cells);
  const shown = new Map<number, Map<number, ShownCell>>();
  const put = (row: number, column: number, cell: ShownCell) => {
    const ofRow = shown.get(row) ?? new Map<number, ShownCell>();
    shown.set(row, ofRow.set(column, cell));
  };
  const arrays: Area[] = [];
  for (const [row, ofRow] of cells) {
    for (const [column, data] of ofRow) {
      const text = formulaOf(data, row, column, shared);
      if (text === undefined) put(row, column, { data, value: contentModel(data) });
      else {
        const formula = formulaModel(text, row, column, contents);
        arrays.push(formula.area);
        put(row, column, { data, value: contents.read(cellAddress(row, column)), formula });
      }
    }
  }
  for (const { startRow, startColumn, endRow, endColumn } of arrays) {
    for (let row = startRow; row <= endRow; row++) {
      for (let column = startColumn; column <= endColumn; column++) {
        const there = shown.get(row)?.get(column);
        if (there?.formula) continue;
        const value = contents.read(cellAddress(row, column));
        put(row, column, { data: there?.data ?? {}, value });
      }
    }
  }
  return shown;
}

function formulaModel(
  text: string,
  row: number,
  column: number,
  { read, spill }: SheetContents,
): FormulaModel {
  const own = { startRow: row, startColumn: column, endRow: row, endColumn: column };
  const address = cellAddress(row, column);
  // A result that found no room takes up its own cell only.
  const filled = read(address) === "#SPILL!" ? undefined : spill(address);
  const area = filled ? areaOf(filled) : own;
  const spills = needsArray(text) || areaAddress(area) !== address;
  return { text: toFile(text), kind: spills ? "spilling" : "one cell", area };
}

/** Cells that share a formula name it by an id; one of them holds it. */
function findShared(cells: Cells) {
  const shared = new Map<string, { formula: string; row: number; column: number }>();
  for (const [row, ofRow] of cells) {
    for (const [column, { f, si }] of ofRow) {
      if (f && si) shared.set(si, { formula: f, row, column });
    }
  }
  return shared;
}

/** A cell's formula without its "=". */
function formulaOf(
  { f, si }: ICellData,
  row: number,
  column: number,
  shared: ReturnType<typeof findShared>,
): string | undefined {
  if (f) return f.replace(/^=/, "");
  const origin = si ? shared.get(si) : undefined;
  return origin && shiftFormula(origin.formula, row - origin.row, column - origin.column).slice(1);
}
