import { ImageSourceType } from "@univerjs/core";
import { SheetDrawingAnchorType } from "@univerjs/preset-sheets-drawing";
import type { FRange, FWorksheet } from "@univerjs/sheets/facade";
import type { Picture } from "../../pane/port";
import { layoutOf } from "../../xlsx/layout";
import type { PlacedPicture } from "../../engine/data/pictures";
import { sizesOf } from "../../engine/data/sizes";

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
  const corner = { row, rowOffset: 0, column, columnOffset: 0 };
  const layout = layoutOf(sizesOf(sheet.getSheet().getConfig()));
  const start = layout.boxOf({ from: corner, to: corner });
  const { to } = layout.cornersOf({ ...start, width, height });
  if (to.column >= sheet.getMaxColumns()) sheet.setColumnCount(to.column + 1);
  if (to.row >= sheet.getMaxRows()) sheet.setRowCount(to.row + 1);
}
