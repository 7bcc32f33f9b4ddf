import type { IColumnData, IRowData, IWorksheetData, Nullable } from "@univerjs/core";
import { BooleanNumber } from "@univerjs/core";
import type { Sizes } from "../../xlsx/layout";
import type { ColumnModel, RowModel } from "../../xlsx/model";

/** How large the columns and rows are of a sheet that the engine keeps. */
export function sizesOf(sheet: Partial<IWorksheetData>): Sizes {
  const { defaultColumnWidth, defaultRowHeight } = sheet;
  return {
    ...(defaultColumnWidth !== undefined && { usualWidth: defaultColumnWidth }),
    ...(defaultRowHeight !== undefined && { usualHeight: defaultRowHeight }),
    columns: new Map(
      entriesOf<IColumnData>(sheet.columnData).map(([column, data]) => [column, columnSize(data)]),
    ),
    rows: entriesOf<IRowData>(sheet.rowData).map(([row, data]) => ({ row, ...rowSize(data) })),
  };
}

export function columnSize({ w, hd }: Partial<IColumnData>): ColumnModel {
  return {
    ...(w !== undefined && { width: w }),
    ...(hd === BooleanNumber.TRUE && { hidden: true }),
  };
}

/** A row's height follows from what is in it unless the data say otherwise. */
export function rowSize({ h, ah, ia, hd }: Partial<IRowData>): Omit<RowModel, "row" | "cells"> {
  const height = ia === BooleanNumber.FALSE ? h : (ah ?? h);
  return {
    ...(height !== undefined && { height, heightIsChosen: ia !== BooleanNumber.TRUE }),
    ...(hd === BooleanNumber.TRUE && { hidden: true }),
  };
}

/** What the engine keeps by number, in the order of the numbers. */
export function entriesOf<T>(record: unknown): [number, Partial<T>][] {
  return Object.entries((record ?? {}) as Record<string, Nullable<Partial<T>>>)
    .map(([key, value]): [number, Partial<T>] => [Number(key), value ?? {}])
    .sort(([one], [other]) => one - other);
}
