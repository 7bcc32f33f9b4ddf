import type { IResources, IWorkbookData, ImageSourceType } from "@univerjs/core";
import type { ISheetImage } from "@univerjs/preset-sheets-drawing";
import { imageTypeOf } from "../../xlsx/images";
import type { Box, Layout } from "../../xlsx/layout";
import { quarterTurned } from "../../xlsx/layout";
import type { Crop, ImageFile, PictureModel } from "../../xlsx/model";
import { toDataAddress, fromDataAddress } from "./dataAddress";

/** Under this name the spreadsheet keeps the pictures that lie over a workbook's cells. */
const PICTURES_RESOURCE = "SHEET_DRAWING_PLUGIN";

/** A picture over the cells of a sheet, as the spreadsheet keeps it. */
export interface PlacedPicture extends ISheetImage {
  /** What it shows, in words. The spreadsheet keeps it for us, and files have a place for it. */
  readonly description?: string;
}

/** The pictures of each sheet, by its id; the last one lies on top. */
export type Pictures = ReadonlyMap<string, readonly PlacedPicture[]>;

/** How the spreadsheet lists them. */
type Kept = Record<string, { data: Record<string, PlacedPicture>; order: string[] }>;

/** `DrawingTypeEnum.DRAWING_IMAGE`, without the code that would come with it. */
const IMAGE_DRAWING = 0;

/** The pictures of a workbook. */
export function picturesOf({ resources }: Pick<IWorkbookData, "resources">): Pictures {
  const data = resources?.find(({ name }) => name === PICTURES_RESOURCE)?.data;
  const kept = data ? (JSON.parse(data) as Kept) : {};
  return new Map(
    Object.entries(kept).map(([sheet, { data: drawings, order }]) => [
      sheet,
      order.flatMap((id) => {
        const drawing = drawings[id];
        return drawing?.drawingType === IMAGE_DRAWING ? [drawing] : [];
      }),
    ]),
  );
}

/** What a workbook keeps of its pictures. */
export function picturesData(pictures: Pictures): IResources[number] {
  const kept: Kept = Object.fromEntries(
    [...pictures].map(([sheet, ofSheet]) => [
      sheet,
      {
        data: Object.fromEntries(ofSheet.map((picture) => [picture.drawingId, picture])),
        order: ofSheet.map(({ drawingId }) => drawingId),
      },
    ]),
  );
  return { name: PICTURES_RESOURCE, data: JSON.stringify(kept) };
}

/** The workbook with these pictures in the place of its own. */
export function withPictures(data: IWorkbookData, pictures: Pictures): IWorkbookData {
  const others = data.resources?.filter(({ name }) => name !== PICTURES_RESOURCE) ?? [];
  return { ...data, resources: [...others, picturesData(pictures)] };
}

/** How a picture goes along when the cells under it move: `SheetDrawingAnchorType`, by a file's word. */
const ANCHOR_TYPES: Readonly<Record<PictureModel["moves"], string>> = {
  oneCell: "0",
  twoCell: "1",
  absolute: "2",
};

/** Gives each picture of a sheet to the spreadsheet. */
export function pictureData(sheetId: string, layout: Layout) {
  // A picture that is placed often is put into text once.
  const sources = new Map<Uint8Array, string>();
  return (picture: PictureModel, index: number): PlacedPicture => {
    const { image, corners, moves, angle, crop, shape, description } = picture;
    const source =
      sources.get(image.bytes) ?? toDataAddress(imageTypeOf(image.ending) ?? "", image.bytes);
    sources.set(image.bytes, source);
    const turn = {
      angle,
      flipX: picture.mirroredAcross,
      flipY: picture.mirroredDown,
      skewX: 0,
      skewY: 0,
    };
    const box = layout.boxOf(corners);
    const held = quarterTurned(box, angle);
    return {
      drawingId: `${sheetId}-picture${index + 1}`,
      unitId: "workbook",
      subUnitId: sheetId,
      drawingType: IMAGE_DRAWING,
      imageSourceType: "BASE64" as ImageSourceType,
      source,
      anchorType: ANCHOR_TYPES[moves] as PlacedPicture["anchorType"],
      sheetTransform: { ...turn, ...corners },
      axisAlignSheetTransform: { ...turn, ...(held === box ? corners : layout.cornersOf(held)) },
      transform: { ...turn, ...box },
      srcRect: crop ? cropData(crop, box) : null,
      ...(shape !== undefined && ({ prstGeom: shape } as Partial<PlacedPicture>)),
      ...(description && { description }),
    };
  };
}

/** The spreadsheet counts what is cut off in pixels of the picture as it is shown. */
function cropData({ left, top, right, bottom }: Crop, { width, height }: Box) {
  const wide = width / (1 - left - right);
  const high = height / (1 - top - bottom);
  return { left: left * wide, top: top * high, right: right * wide, bottom: bottom * high };
}

function cropModel({ srcRect }: PlacedPicture, { width, height }: Box): Crop | undefined {
  if (!srcRect) return undefined;
  const { left = 0, right = 0, top = 0, bottom = 0 } = srcRect;
  const share = (cut: number, whole: number) => (cut === 0 || whole === 0 ? 0 : cut / whole);
  return {
    left: share(left, left + width + right),
    top: share(top, top + height + bottom),
    right: share(right, left + width + right),
    bottom: share(bottom, top + height + bottom),
  };
}

/** Takes the pictures of a sheet from the spreadsheet; one that no file can hold is left out. */
export function pictureModels(
  pictures: readonly PlacedPicture[],
  layout: Layout,
  images: Map<string, ImageFile | undefined>,
): PictureModel[] {
  return pictures.flatMap((picture): PictureModel[] => {
    const { source, description, prstGeom, anchorType = "0" } = picture;
    if (!images.has(source)) images.set(source, fromDataAddress(source));
    const image = images.get(source);
    if (!image) return [];
    const { from, to, angle = 0, flipX, flipY } = picture.sheetTransform;
    const crop = cropModel(picture, layout.boxOf({ from, to }));
    const moves = Object.entries(ANCHOR_TYPES).find(([, type]) => type === anchorType)?.[0];
    return [
      {
        image,
        corners: { from, to },
        moves: (moves ?? "oneCell") as PictureModel["moves"],
        angle,
        mirroredAcross: flipX ?? false,
        mirroredDown: flipY ?? false,
        ...(crop && { crop }),
        ...(prstGeom && { shape: String(prstGeom) }),
        ...(description !== undefined && { description }),
      },
    ];
  });
}
