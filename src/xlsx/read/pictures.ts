import type { ImageSourceType, IWorksheetData } from "@univerjs/core";
import { lastColumn, lastRow } from "../../formula/address";
import { imageTypeOf, toDataAddress } from "../images";
import type { Box, Corners, Layout } from "../layout";
import { layoutOf, quarterTurned } from "../layout";
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
import type { Corner, PlacedPicture } from "../pictures";
import { imageDrawing } from "../pictures";
import { fromFileText } from "../strings";
import { pixelsOfEmu } from "../units";

/** The pictures among what is drawn on a sheet, the last one on top. */
export function readPictures(
  drawn: readonly Drawn[],
  id: string,
  sheet: Partial<IWorksheetData>,
): PlacedPicture[] {
  const layout = layoutOf(sheet);
  // A picture that is placed often is put into text once.
  const sources = new Map<Uint8Array, string>();
  const sourceOf = ({ type, bytes }: DrawnImage) => {
    const source = sources.get(bytes) ?? toDataAddress(type, bytes);
    sources.set(bytes, source);
    return source;
  };
  return drawn.flatMap(({ anchor, image }, index) => {
    const picture = childOf(anchor, "pic");
    const corners = anchor && cornersOf(anchor, layout);
    if (!picture || !image || !corners) return [];
    return {
      drawingId: `${id}-picture${index + 1}`,
      unitId: "workbook",
      subUnitId: id,
      drawingType: imageDrawing,
      imageSourceType: "BASE64" as ImageSourceType,
      source: sourceOf(image),
      anchorType: moves(anchor),
      ...readLook(picture, corners, layout),
    };
  });
}

/** How many rows and columns of a sheet its pictures reach. */
export function reachOf(drawn: readonly Drawn[], sheet: Partial<IWorksheetData>) {
  const layout = layoutOf(sheet);
  const ends = drawn.flatMap(
    ({ anchor, image }) => (anchor && image && cornersOf(anchor, layout)?.to) ?? [],
  );
  return {
    rows: ends.reduce((most, { row }) => Math.max(most, row + 1), 0),
    columns: ends.reduce((most, { column }) => Math.max(most, column + 1), 0),
  };
}

interface DrawnImage {
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** Something that lies over a sheet's cells. */
export interface Drawn {
  /** What holds it at its place; nothing stands for a drawing that nobody can read. */
  readonly anchor?: XmlElement;
  /** The picture itself, if it is one that can be shown here. */
  readonly image?: DrawnImage;
}

/** All that lies over the cells of the sheet whose part is at this path. */
export function drawnOn(file: Package, path: string): Drawn[] {
  const drawings = relationshipsOf(file, path).filter(({ type }) => type === "drawing");
  return drawings.flatMap(({ target }) => {
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
    const type = part && imageTypeOf(part.target);
    return { anchor, ...(bytes && type && { image: { type, bytes } }) };
  });
}

/** How a picture lies and looks, held as its anchor says. */
function readLook(picture: XmlElement, held: Corners, layout: Layout) {
  const properties = childOf(picture, "spPr");
  const transform = childOf(properties, "xfrm");
  const angle = ((transform && numberOf(transform, "rot")) ?? 0) / 60_000;
  const inFile = layout.boxOf(held);
  const box = quarterTurned(inFile, angle);
  const turn = {
    angle,
    flipX: transform !== undefined && flagOf(transform, "flipH"),
    flipY: transform !== undefined && flagOf(transform, "flipV"),
    skewX: 0,
    skewY: 0,
  };
  const named = childOf(childOf(picture, "nvPicPr"), "cNvPr");
  const description = named?.attributes.descr;
  const shape = childOf(properties, "prstGeom")?.attributes.prst;
  return {
    sheetTransform: { ...turn, ...(box === inFile ? held : layout.cornersOf(box)) },
    axisAlignSheetTransform: { ...turn, ...held },
    transform: { ...turn, ...box },
    srcRect: cropOf(childOf(childOf(picture, "blipFill"), "srcRect"), box),
    ...(shape !== undefined && shape !== "rect" && { prstGeom: shape }),
    ...(description && { description: fromFileText(description) }),
  };
}

/** What is cut off at each edge, in pixels as the picture is shown. */
function cropOf(cut: XmlElement | undefined, { width, height }: Box) {
  if (!cut) return null;
  const share = (edge: string) => (numberOf(cut, edge) ?? 0) / 100_000;
  const [left, top, right, bottom] = ["l", "t", "r", "b"].map(share);
  if (left + right >= 1 || top + bottom >= 1) return null;
  const wide = width / (1 - left - right);
  const high = height / (1 - top - bottom);
  return { left: left * wide, top: top * high, right: right * wide, bottom: bottom * high };
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
  if (!isLine(column, lastColumn) || !isLine(row, lastRow)) return undefined;
  const offset = (name: string) => pixelsOfEmu(number(name) || 0);
  return { column, columnOffset: offset("colOff"), row, rowOffset: offset("rowOff") };
}

/** How it goes along when the cells under it move: `SheetDrawingAnchorType`, by a file's word for it. */
function moves(anchor: XmlElement): PlacedPicture["anchorType"] {
  const word =
    anchor.name === "twoCellAnchor" ? (anchor.attributes.editAs ?? "twoCell") : anchor.name;
  const type = word.startsWith("twoCell") ? "1" : word.startsWith("oneCell") ? "0" : "2";
  return type as PlacedPicture["anchorType"];
}
