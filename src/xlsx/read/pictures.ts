import { LAST_COLUMN, LAST_ROW } from "../../formula/address";
import { endingOf, imageTypeOf } from "../images";
import type { Layout } from "../layout";
import { quarterTurned } from "../layout";
import type { Corner, Corners, Crop, ImageFile, PictureModel } from "../model";
import type { Package, XmlElement } from "../package";
import {
  attributeOf,
  childOf,
  flagOf,
  numberOf,
  partAt,
  relationshipsOf,
  UnreadableFile,
  xmlAt,
} from "../package";
import { fromFileText } from "../strings";
import { pixelsOfEmu } from "../units";

/** The pictures among what is drawn on a sheet, the last one on top. */
export function readPictures(drawn: readonly Drawn[], layout: Layout): PictureModel[] {
  return drawn.flatMap(({ anchor, image }) => {
    const picture = childOf(anchor, "pic");
    const held = anchor && cornersOf(anchor, layout);
    if (!picture || !image || !held) return [];
    return { image, moves: movesOf(anchor), ...readLook(picture, held, layout) };
  });
}

/** Something that lies over a sheet's cells. */
export interface Drawn {
  /** What holds it at its place; nothing stands for a drawing that nobody can read. */
  readonly anchor?: XmlElement;
  /** The picture itself, if it is one that can be shown here. */
  readonly image?: ImageFile;
}

/** All that lies over the cells of the sheet whose part is at this path. */
export function drawnOn(file: Package, path: string): Drawn[] {
  const drawings = relationshipsOf(file, path).filter(({ type }) => type === "drawing");
  return drawings.flatMap(({ target }) => {
    // One that is related, absent and not refused is named nowhere in the sheet.
    if (!partAt(file, target)) return [];
    try {
      return drawnIn(file, target);
    } catch (error) {
      // A workbook opens without a drawing that nobody can read.
      if (!(error instanceof UnreadableFile)) throw error;
      return [{}];
    }
  });
}

function drawnIn(file: Package, drawing: string): Drawn[] {
  const related = relationshipsOf(file, drawing);
  return xmlAt(file, drawing).children.map((anchor) => {
    const blip = childOf(childOf(childOf(anchor, "pic"), "blipFill"), "blip");
    const embedded = blip && attributeOf(blip, "embed");
    const part = related.find((relationship) => relationship.id === embedded);
    const bytes = part && !part.external ? partAt(file, part.target) : undefined;
    const shown = bytes && imageTypeOf(part!.target) !== undefined;
    return { anchor, ...(shown && { image: { bytes, ending: endingOf(part!.target) } }) };
  });
}

/** How a picture lies and looks, held as its anchor says. */
function readLook(picture: XmlElement, held: Corners, layout: Layout) {
  const properties = childOf(picture, "spPr");
  const transform = childOf(properties, "xfrm");
  const angle = ((transform && numberOf(transform, "rot")) ?? 0) / 60_000;
  const inFile = layout.boxOf(held);
  const box = quarterTurned(inFile, angle);
  const crop = cropOf(childOf(childOf(picture, "blipFill"), "srcRect"));
  const description = childOf(childOf(picture, "nvPicPr"), "cNvPr")?.attributes.descr;
  const shape = childOf(properties, "prstGeom")?.attributes.prst;
  return {
    corners: box === inFile ? held : layout.cornersOf(box),
    angle,
    mirroredAcross: transform !== undefined && flagOf(transform, "flipH"),
    mirroredDown: transform !== undefined && flagOf(transform, "flipV"),
    ...(crop && { crop }),
    ...(shape !== undefined && shape !== "rect" && { shape }),
    ...(description && { description: fromFileText(description) }),
  };
}

function cropOf(cut: XmlElement | undefined): Crop | undefined {
  if (!cut) return undefined;
  const share = (edge: string) => (numberOf(cut, edge) ?? 0) / 100_000;
  const [left, top, right, bottom] = [share("l"), share("t"), share("r"), share("b")];
  if (left + right >= 1 || top + bottom >= 1) return undefined;
  return { left, top, right, bottom };
}

/** Where an anchor holds what it holds; nothing where it does not say. */
function cornersOf(anchor: XmlElement, layout: Layout): Corners | undefined {
  const from = cornerOf(childOf(anchor, "from"));
  const to = cornerOf(childOf(anchor, "to"));
  if (from && to) return { from, to };
  const extent = childOf(anchor, "ext");
  const width = extent && numberOf(extent, "cx");
  const height = extent && numberOf(extent, "cy");
  const position = childOf(anchor, "pos");
  if (width === undefined || height === undefined || !(from ?? position)) return undefined;
  const { left, top } = from
    ? layout.boxOf({ from, to: from })
    : {
        left: pixelsOfEmu(numberOf(position!, "x") ?? 0),
        top: pixelsOfEmu(numberOf(position!, "y") ?? 0),
      };
  const box = { left, top, width: pixelsOfEmu(width), height: pixelsOfEmu(height) };
  const corners = layout.cornersOf(box);
  return from ? { from, to: corners.to } : corners;
}

function cornerOf(corner: XmlElement | undefined): Corner | undefined {
  const number = (name: string) => Number(childOf(corner, name)?.text ?? NaN);
  const [column, row] = [number("col"), number("row")];
  const isLine = (index: number, last: number) =>
    Number.isInteger(index) && index >= 0 && index <= last;
  if (!isLine(column, LAST_COLUMN) || !isLine(row, LAST_ROW)) return undefined;
  const offset = (name: string) => pixelsOfEmu(number(name) || 0);
  return { column, columnOffset: offset("colOff"), row, rowOffset: offset("rowOff") };
}

/** How it goes along when the cells under it move. */
function movesOf(anchor: XmlElement): PictureModel["moves"] {
  const word =
    anchor.name === "twoCellAnchor" ? (anchor.attributes.editAs ?? "twoCell") : anchor.name;
  if (word.startsWith("twoCell")) return "twoCell";
  return word.startsWith("oneCell") ? "oneCell" : "absolute";
}
