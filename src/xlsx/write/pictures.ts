import { fromDataAddress } from "../images";
import type { Box, Layout } from "../layout";
import { quarterTurned } from "../layout";
import { writeXml } from "../package";
import type { Corner, PlacedPicture } from "../pictures";
import { toFileText } from "../strings";
import { emuOfPixels } from "../units";
import { relationshipNamespace } from "./namespaces";

const drawing = "http://schemas.openxmlformats.org/drawingml/2006";

/** How a picture goes along when the cells under it move, in the words of the spreadsheet and of a file. */
const goesAlong: Readonly<Record<string, string>> = {
  "0": "oneCell",
  "1": "twoCell",
  "2": "absolute",
};

/** The pictures of a workbook as files of their own, each once however often it is placed. */
export interface MediaFolder {
  /** Takes a picture in and says under which name it lies; nothing for what no file can hold. */
  add(address: string): string | undefined;
  readonly files: ReadonlyMap<string, Uint8Array>;
}

export function createMedia(): MediaFolder {
  const names = new Map<string, string>();
  const files = new Map<string, Uint8Array>();
  return {
    files,
    add(address) {
      const known = names.get(address);
      if (known !== undefined) return known;
      const image = fromDataAddress(address);
      if (!image) return undefined;
      const name = `image${files.size + 1}.${image.ending}`;
      names.set(address, name);
      files.set(name, image.bytes);
      return name;
    },
  };
}

/** A sheet's drawing, and the names of the pictures that it shows, in the order it refers to them. */
export interface WrittenDrawing {
  readonly xml: string;
  readonly media: readonly string[];
}

/** Writes the pictures of one sheet, the last one on top. */
export function writeDrawing(
  pictures: readonly PlacedPicture[],
  layout: Layout,
  media: MediaFolder,
): WrittenDrawing {
  const shown: string[] = [];
  const anchors = pictures.flatMap((picture, index) => {
    const name = media.add(picture.source);
    if (name === undefined) return [];
    if (!shown.includes(name)) shown.push(name);
    return writeAnchor(picture, layout, shown.indexOf(name) + 1, index + 1);
  });
  const xml = writeXml(
    "xdr:wsDr",
    {
      "xmlns:xdr": `${drawing}/spreadsheetDrawing`,
      "xmlns:a": `${drawing}/main`,
      "xmlns:r": relationshipNamespace,
    },
    anchors,
  );
  return { xml, media: shown };
}

function writeAnchor(
  picture: PlacedPicture,
  layout: Layout,
  medium: number,
  number: number,
): string {
  const { from, to, angle = 0, flipX, flipY } = picture.sheetTransform;
  const box = layout.boxOf({ from, to });
  const inFile = quarterTurned(box, angle);
  // Where they lie is kept as it is; a picture that lies on its side is held by another edge.
  const corners = inFile === box ? { from, to } : layout.cornersOf(inFile);
  const { description, prstGeom, anchorType = "0" } = picture;
  const named = {
    id: number + 1,
    name: `Picture ${number}`,
    descr: description === undefined ? undefined : toFileText(description),
  };
  return writeXml("xdr:twoCellAnchor", { editAs: goesAlong[anchorType] }, [
    writeCorner("xdr:from", corners.from),
    writeCorner("xdr:to", corners.to),
    writeXml("xdr:pic", {}, [
      writeXml("xdr:nvPicPr", {}, [
        writeXml("xdr:cNvPr", named),
        writeXml("xdr:cNvPicPr", {}, writeXml("a:picLocks", { noChangeAspect: 1 })),
      ]),
      writeXml("xdr:blipFill", {}, [
        writeXml("a:blip", { "r:embed": `rId${medium}` }),
        writeCrop(picture, box),
        writeXml("a:stretch", {}, writeXml("a:fillRect")),
      ]),
      writeXml("xdr:spPr", {}, [
        writeXml(
          "a:xfrm",
          {
            rot: angle === 0 ? undefined : Math.round(((angle % 360) + 360) * 60_000) % 21_600_000,
            flipH: flipX ? 1 : undefined,
            flipV: flipY ? 1 : undefined,
          },
          [
            writeXml("a:off", { x: emuOfPixels(box.left), y: emuOfPixels(box.top) }),
            writeXml("a:ext", { cx: emuOfPixels(box.width), cy: emuOfPixels(box.height) }),
          ],
        ),
        writeXml("a:prstGeom", { prst: prstGeom ?? "rect" }, writeXml("a:avLst")),
      ]),
    ]),
    writeXml("xdr:clientData"),
  ]);
}

function writeCorner(name: string, { column, columnOffset, row, rowOffset }: Corner): string {
  return writeXml(name, {}, [
    writeXml("xdr:col", {}, String(column)),
    writeXml("xdr:colOff", {}, String(emuOfPixels(columnOffset))),
    writeXml("xdr:row", {}, String(row)),
    writeXml("xdr:rowOff", {}, String(emuOfPixels(rowOffset))),
  ]);
}

/** What is cut off at each edge: pixels as it is shown become thousandths of a percent of the whole. */
function writeCrop({ srcRect }: PlacedPicture, { width, height }: Box): string {
  if (!srcRect) return "";
  const { left = 0, right = 0, top = 0, bottom = 0 } = srcRect;
  const share = (cut: number, whole: number) =>
    cut === 0 || whole === 0 ? undefined : Math.round((cut / whole) * 100_000);
  return writeXml("a:srcRect", {
    l: share(left, left + width + right),
    t: share(top, top + height + bottom),
    r: share(right, left + width + right),
    b: share(bottom, top + height + bottom),
  });
}
