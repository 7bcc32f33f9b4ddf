import type { Box } from "../../../xlsx/layout";
import { layoutOf } from "../../../xlsx/layout";
import { sizesOf } from "../../../engine/data/sizes";
import type { PlacedPicture } from "../../../engine/data/pictures";
import { picturesOf } from "../../../engine/data/pictures";
import type { PageWorkbook } from "../spreadsheet";

/** A picture over the sheet that is to be printed, and the pixels it lies on. */
export interface PrintedPicture {
  readonly picture: PlacedPicture;
  readonly box: Box;
}

/** The pictures of a sheet, the last one on top. */
export function picturesOn(workbook: PageWorkbook, sheetId: string): PrintedPicture[] {
  const data = workbook.save();
  const layout = layoutOf(sizesOf(data.sheets[sheetId] ?? {}));
  const pictures = picturesOf(data).get(sheetId) ?? [];
  return pictures.map((picture) => ({ picture, box: layout.boxOf(picture.sheetTransform) }));
}

/** A picture as an element that lies where it lies over the sheet, cut and turned as there. */
export function pictureElement({ picture, box }: PrintedPicture): HTMLElement {
  const { source, description = "", srcRect } = picture;
  const { angle = 0, flipX, flipY } = picture.sheetTransform;
  const { left = 0, top = 0, right = 0, bottom = 0 } = srcRect ?? {};
  const image = document.createElement("img");
  Object.assign(image, { src: source, alt: description });
  Object.assign(image.style, {
    margin: `${-top}px 0 0 ${-left}px`,
    width: `${left + box.width + right}px`,
    height: `${top + box.height + bottom}px`,
  });
  const frame = document.createElement("div");
  frame.className = "picture";
  Object.assign(frame.style, {
    left: `${box.left}px`,
    top: `${box.top}px`,
    width: `${box.width}px`,
    height: `${box.height}px`,
    transform: `rotate(${angle}deg) scale(${flipX ? -1 : 1}, ${flipY ? -1 : 1})`,
  });
  frame.append(image);
  return frame;
}
