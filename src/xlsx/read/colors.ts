import type { Package, XmlElement } from "../package";
import { childOf, numberOf, relationshipsOf, xmlAt } from "../package";

/** A colour as "#rrggbb", of an element that names it in one of the ways there are. */
export type ColorOf = (element: XmlElement | undefined) => string | undefined;

/** Reads colours that a workbook writes out, or takes from its theme or from the old palette. */
export function colorReader(file: Package, workbookPath: string, styles?: XmlElement): ColorOf {
  const theme = themeColors(file, workbookPath);
  const own = childOf(childOf(styles, "colors"), "indexedColors");
  const palette = own ? own.children.map(({ attributes }) => rgbOf(attributes.rgb)) : OLD_PALETTE;

  return (element) => {
    if (!element) return undefined;
    const index = numberOf(element, "indexed");
    const themed = numberOf(element, "theme");
    const color =
      rgbOf(element.attributes.rgb) ??
      (themed === undefined ? undefined : theme[themed]) ??
      (index === undefined ? undefined : palette[index]);
    return color && tinted(color, numberOf(element, "tint") ?? 0);
  };
}

/** Written as "AARRGGBB"; programs disagree on the meaning of the first two and all leave them. */
function rgbOf(written: string | undefined): string | undefined {
  const [, digits] = /^(?:[0-9a-f]{2})?([0-9a-f]{6})$/i.exec(written ?? "") ?? [];
  return digits && `#${digits.toLowerCase()}`;
}

/** What cells call theme colour 0, 1, 2 and 3 is written in the theme as 1, 0, 3 and 2. */
const IN_ORDER_OF_CELLS = ["lt1", "dk1", "lt2", "dk2"];

function themeColors(file: Package, workbookPath: string): (string | undefined)[] {
  const found = relationshipsOf(file, workbookPath).find(({ type }) => type === "theme");
  if (!found) return [];
  const scheme = childOf(childOf(xmlAt(file, found.target), "themeElements"), "clrScheme");
  if (!scheme) return [];
  const swatches = [
    ...IN_ORDER_OF_CELLS.map((name) => childOf(scheme, name)),
    ...scheme.children.slice(IN_ORDER_OF_CELLS.length),
  ];
  return swatches.map((swatch) => {
    const attributes = swatch?.children[0]?.attributes;
    return rgbOf(attributes?.lastClr ?? attributes?.val);
  });
}

/** A tint above 0 takes a colour that part of the way to white, one below 0 to black. */
function tinted(color: string, tint: number): string {
  if (tint === 0) return color;
  const target = tint > 0 ? 255 : 0;
  const channels = [1, 3, 5].map((at) => parseInt(color.slice(at, at + 2), 16));
  const mixed = channels.map((channel) =>
    Math.round(channel + (target - channel) * Math.abs(tint)),
  );
  return `#${mixed.map((channel) => channel.toString(16).padStart(2, "0")).join("")}`;
}

/** The palette of before 2007: eight colours twice, then forty-eight more. */
const BASIC = "#000000 #ffffff #ff0000 #00ff00 #0000ff #ffff00 #ff00ff #00ffff";
const OLD_PALETTE = (
  `${BASIC} ${BASIC} ` +
  "#800000 #008000 #000080 #808000 #800080 #008080 #c0c0c0 #808080 #9999ff #993366 #ffffcc #ccffff " +
  "#660066 #ff8080 #0066cc #ccccff #000080 #ff00ff #ffff00 #00ffff #800080 #800000 #008080 #0000ff " +
  "#00ccff #ccffff #ccffcc #ffff99 #99ccff #ff99cc #cc99ff #ffcc99 #3366ff #33cccc #99cc00 #ffcc00 " +
  "#ff9900 #ff6600 #666699 #969696 #003366 #339966 #003300 #333300 #993300 #993366 #333399 #333333"
).split(" ");
