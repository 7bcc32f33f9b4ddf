import type { IResources, IWorkbookData } from "@univerjs/core";
import type { ISheetImage } from "@univerjs/preset-sheets-drawing";

/** Under this name the spreadsheet keeps the pictures that lie over a workbook's cells. */
const picturesResource = "SHEET_DRAWING_PLUGIN";

/** A picture over the cells of a sheet, as the spreadsheet keeps it. */
export interface PlacedPicture extends ISheetImage {
  /** What it shows, in words. The spreadsheet keeps it for us, and files have a place for it. */
  readonly description?: string;
}

/** A corner of a picture: the cell it lies in, and how far into it in pixels. */
export type Corner = PlacedPicture["sheetTransform"]["from"];

/** The pictures of each sheet, by its id; the last one lies on top. */
export type Pictures = ReadonlyMap<string, readonly PlacedPicture[]>;

/** How the spreadsheet lists them. */
type Kept = Record<string, { data: Record<string, PlacedPicture>; order: string[] }>;

/** `DrawingTypeEnum.DRAWING_IMAGE`, without the code that would come with it. */
export const imageDrawing = 0;

/** The pictures of a workbook. */
export function picturesOf({ resources }: Pick<IWorkbookData, "resources">): Pictures {
  const data = resources?.find(({ name }) => name === picturesResource)?.data;
  const kept = data ? (JSON.parse(data) as Kept) : {};
  return new Map(
    Object.entries(kept).map(([sheet, { data: drawings, order }]) => [
      sheet,
      order.map((id) => drawings[id]).filter((drawing) => drawing?.drawingType === imageDrawing),
    ]),
  );
}

/** What a workbook keeps of its pictures. */
export function resourceOf(pictures: Pictures): IResources[number] {
  const kept: Kept = Object.fromEntries(
    [...pictures].map(([sheet, ofSheet]) => [
      sheet,
      {
        data: Object.fromEntries(ofSheet.map((picture) => [picture.drawingId, picture])),
        order: ofSheet.map(({ drawingId }) => drawingId),
      },
    ]),
  );
  return { name: picturesResource, data: JSON.stringify(kept) };
}

/** The workbook with these pictures in the place of its own. */
export function withPictures(data: IWorkbookData, pictures: Pictures): IWorkbookData {
  const others = data.resources?.filter(({ name }) => name !== picturesResource) ?? [];
  return { ...data, resources: [...others, resourceOf(pictures)] };
}
