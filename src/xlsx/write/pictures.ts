import type { Layout } from "../layout";
import { quarterTurned } from "../layout";
import type { Corner, Crop, ImageFile, PictureModel } from "../model";
import { writeXml } from "../package";
import { toFileText } from "../strings";
import { emuOfPixels } from "../units";
import { RELATIONSHIP_NAMESPACE } from "./namespaces";

const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006";

/** The pictures of a workbook as files of their own, each once however often it is placed. */
export interface MediaFolder {
  /** Takes a picture in and says under which name it lies. */
  add(image: ImageFile): string;
  readonly files: ReadonlyMap<string, Uint8Array>;
}

export function createMedia(): MediaFolder {
  const names = new Map<Uint8Array, string>();
  const files = new Map<string, Uint8Array>();
  return {
    files,
    add({ bytes, ending }) {
      const name = names.get(bytes) ?? `image${files.size + 1}.${ending}`;
      names.set(bytes, name);
      files.set(name, bytes);
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
  pictures: readonly PictureModel[],
  layout: Layout,
  media: MediaFolder,
): WrittenDrawing {
  const shown: string[] = [];
  const anchors = pictures.map((picture, index) => {
    const name = media.add(picture.image);
    if (!shown.includes(name)) shown.push(name);
    return writeAnchor(picture, layout, shown.indexOf(name) + 1, index + 1);
  });
  const xml = writeXml(
    "xdr:wsDr",
    {
      "xmlns:xdr": `${DRAWING}/spreadsheetDrawing`,
      "xmlns:a": `${DRAWING}/main`,
      "xmlns:r": RELATIONSHIP_NAMESPACE,
    },
    anchors,
  );
  return { xml, media: shown };
}

function writeAnchor(
  { corners, moves, angle, mirroredAcross, mirroredDown, crop, shape, description }: PictureModel,
  layout: Layout,
  medium: number,
  number: number,
): string {
  const box = layout.boxOf(corners);
  const inFile = quarterTurned(box, angle);
  // Where they lie is kept as it is; a picture that lies on its side is held by another edge.
  const held = inFile === box ? corners : layout.cornersOf(inFile);
  const named = {
    id: number + 1,
    name: `Picture ${number}`,
    descr: description === undefined ? undefined : toFileText(description),
  };
  return writeXml("xdr:twoCellAnchor", { editAs: moves }, [
    writeCorner("xdr:from", held.from),
    writeCorner("xdr:to", held.to),
    writeXml("xdr:pic", {}, [
      writeXml("xdr:nvPicPr", {}, [
        writeXml("xdr:cNvPr", named),
        writeXml("xdr:cNvPicPr", {}, writeXml("a:picLocks", { noChangeAspect: 1 })),
      ]),
      writeXml("xdr:blipFill", {}, [
        writeXml("a:blip", { "r:embed": `rId${medium}` }),
        writeCrop(crop),
        writeXml("a:stretch", {}, writeXml("a:fillRect")),
      ]),
      writeXml("xdr:spPr", {}, [
        writeXml(
          "a:xfrm",
          {
            rot: angle === 0 ? undefined : Math.round(((angle % 360) + 360) * 60_000) % 21_600_000,
            flipH: mirroredAcross ? 1 : undefined,
            flipV: mirroredDown ? 1 : undefined,
          },
          [
            writeXml("a:off", { x: emuOfPixels(box.left), y: emuOfPixels(box.top) }),
            writeXml("a:ext", { cx: emuOfPixels(box.width), cy: emuOfPixels(box.height) }),
          ],
        ),
        writeXml("a:prstGeom", { prst: shape ?? "rect" }, writeXml("a:avLst")),
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

/** What is cut off at each edge, in thousandths of a percent of the whole. */
function writeCrop(crop: Crop | undefined): string {
  if (!crop) return "";
  const { left, top, right, bottom } = crop;
  const written = (share: number) => (share === 0 ? undefined : Math.round(share * 100_000));
  const edges = { l: written(left), t: written(top), r: written(right), b: written(bottom) };
  return writeXml("a:srcRect", edges);
}
