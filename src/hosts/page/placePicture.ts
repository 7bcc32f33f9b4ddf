import type { Univer } from "@univerjs/core";
import { ImageSourceType } from "@univerjs/core";
import { SheetDrawingAnchorType } from "@univerjs/preset-sheets-drawing";
import type { FRange, FWorksheet } from "@univerjs/sheets/facade";
import type { Picture } from "../../pane/port";
import { layoutOf } from "../../xlsx/layout";
import type { PlacedPicture } from "../../engine/data/pictures";
import { sizesOf } from "../../engine/data/sizes";
import type { Corner } from "./growth/room";
import { makeRoom } from "./growth/room";

/** Puts a picture over the cells: at a single selected cell, else to the right of the selection. */
export async function placePicture(
  univer: Univer,
  sheet: FWorksheet,
  selected: FRange,
  picture: Picture,
): Promise<void> {
  const { png, width, height, description } = picture;
  const row = selected.getRow();
  const columns = selected.getWidth();
  const single = columns === 1 && selected.getHeight() === 1;
  const column = selected.getColumn() + (single ? 0 : columns);
  const place = { unitId: sheet.getWorkbook().getUnitId(), sheetId: sheet.getSheetId() };
  makeRoom(univer, place, cornerOf(sheet, row, column, picture));
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

/** The cell under a picture's far corner. */
function cornerOf(
  sheet: FWorksheet,
  row: number,
  column: number,
  { width, height }: Picture,
): Corner {
  const corner = { row, rowOffset: 0, column, columnOffset: 0 };
  const layout = layoutOf(sizesOf(sheet.getSheet().getConfig()));
  const start = layout.boxOf({ from: corner, to: corner });
  return layout.cornersOf({ ...start, width, height }).to;
}
