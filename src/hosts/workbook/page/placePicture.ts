import { ImageSourceType } from "@univerjs/core";
import { SheetDrawingAnchorType } from "@univerjs/preset-sheets-drawing";
import type { FRange, FWorksheet } from "@univerjs/sheets/facade";
import type { Picture } from "../../../pane/port";
import type { PlacedPicture } from "../xlsx/pictures";

/** Puts a picture over the cells: at a single selected cell, else to the right of the selection. */
export async function placePicture(
  sheet: FWorksheet,
  selected: FRange,
  { png, width, height, description }: Picture,
): Promise<void> {
  const row = selected.getRow();
  const columns = selected.getWidth();
  const single = columns === 1 && selected.getHeight() === 1;
  const column = selected.getColumn() + (single ? 0 : columns);
  makeRoom(sheet, row, column, width, height);
  const image: PlacedPicture = await sheet
    .newOverGridImage()
    .setSource(`data:image/png;base64,${png}`, ImageSourceType.BASE64)
    .setRow(row)
    .setColumn(column)
    .setWidth(width)
    .setHeight(height)
    .setAnchorType(SheetDrawingAnchorType.Position)
    .buildAsync();
  const described: PlacedPicture = { ...image, description };
  sheet.insertImages([described]);
}

/** A sheet may end before the picture does. */
function makeRoom(
  sheet: FWorksheet,
  row: number,
  column: number,
  width: number,
  height: number,
): void {
  const { defaultColumnWidth, defaultRowHeight } = sheet.getSheet().getConfig();
  const columns = sheet.getMaxColumns();
  const rows = sheet.getMaxRows();
  const lackOfWidth = width - sumFrom(column, columns, (index) => sheet.getColumnWidth(index));
  const lackOfHeight = height - sumFrom(row, rows, (index) => sheet.getRowHeight(index));
  if (lackOfWidth >= 0) {
    sheet.setColumnCount(
      Math.max(columns, column) + Math.ceil(lackOfWidth / defaultColumnWidth) + 1,
    );
  }
  if (lackOfHeight >= 0) sheet.setRowCount(rows + Math.ceil(lackOfHeight / defaultRowHeight) + 1);
}

function sumFrom(start: number, end: number, sizeOf: (index: number) => number): number {
  let sum = 0;
  for (let index = start; index < end; index++) sum += sizeOf(index);
  return sum;
}
