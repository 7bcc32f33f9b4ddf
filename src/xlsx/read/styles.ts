import type { BorderSide, LineModel, LineStyle, StyleModel } from "../model";
import { LINE_STYLES } from "../model";
import { BUILT_IN_FORMATS } from "../numberFormats";
import type { XmlElement } from "../package";
import { childOf, childrenOf, flagOf, numberOf } from "../package";
import type { ColorOf } from "./colors";

/** How a cell looks by the number it names: the formats of the workbook in their own order. */
export function readStyles(styles: XmlElement | undefined, colorOf: ColorOf): StyleModel[] {
  const listed = (name: string) => childOf(styles, name)?.children ?? [];
  const formats: Record<number, string> = { ...BUILT_IN_FORMATS };
  for (const format of listed("numFmts")) {
    formats[numberOf(format, "numFmtId") ?? -1] = format.attributes.formatCode ?? "";
  }
  const fonts = listed("fonts").map((font) => readFont(font, colorOf));
  const fills = listed("fills").map((fill) => readFill(fill, colorOf));
  const borders = listed("borders").map((border) => readBorders(border, colorOf));

  return childrenOf(childOf(styles, "cellXfs"), "xf").map((look) => {
    const format = formats[numberOf(look, "numFmtId") ?? 0];
    return {
      ...fonts[numberOf(look, "fontId") ?? 0],
      ...fills[numberOf(look, "fillId") ?? 0],
      ...borders[numberOf(look, "borderId") ?? 0],
      ...readAlignment(childOf(look, "alignment")),
      ...(format && format.toLowerCase() !== "general" && { format }),
    };
  });
}

function readFont(font: XmlElement, colorOf: ColorOf): StyleModel {
  const has = (name: string) => {
    const child = childOf(font, name);
    return child !== undefined && flagOf(child, "val", true);
  };
  const name = childOf(font, "name")?.attributes.val;
  const size = childOf(font, "sz");
  const color = colorOf(childOf(font, "color"));
  const raised = childOf(font, "vertAlign")?.attributes.val;
  return {
    ...(name && { font: name }),
    ...(size && { size: numberOf(size, "val") ?? 11 }),
    ...(color && { color }),
    ...(has("b") && { bold: true }),
    ...(has("i") && { italic: true }),
    ...(underlined(childOf(font, "u")) && { underline: true }),
    ...(has("strike") && { strike: true }),
    ...((raised === "superscript" || raised === "subscript") && { raised }),
  };
}

/** An underline's value is its kind, and a single line where it names none. */
function underlined(element: XmlElement | undefined): boolean {
  return element !== undefined && element.attributes.val !== "none";
}

function readFill(fill: XmlElement, colorOf: ColorOf): StyleModel {
  const pattern = childOf(fill, "patternFill");
  if (!pattern || (pattern.attributes.patternType ?? "none") === "none") return {};
  // A solid fill has its colour in front; of the patterns, which we do not draw, the ground stays.
  const solid = pattern.attributes.patternType === "solid";
  const color = colorOf(childOf(pattern, solid ? "fgColor" : "bgColor"));
  return color ? { fill: color } : {};
}

/** A file for a sheet that is read from the right may name a side by where a line of text starts. */
const NAMES_OF_SIDES: Readonly<Record<BorderSide, readonly string[]>> = {
  top: ["top"],
  bottom: ["bottom"],
  left: ["left", "start"],
  right: ["right", "end"],
};

function readBorders(border: XmlElement, colorOf: ColorOf): StyleModel {
  const lines = Object.entries(NAMES_OF_SIDES).flatMap(([side, names]): [string, LineModel][] => {
    const element = border.children.find(({ name }) => names.includes(name));
    const style = element?.attributes.style;
    if (!isLineStyle(style)) return [];
    return [[side, { style, color: colorOf(childOf(element, "color")) ?? "#000000" }]];
  });
  return lines.length > 0 ? { borders: Object.fromEntries(lines) } : {};
}

function isLineStyle(style: string | undefined): style is LineStyle {
  return (LINE_STYLES as readonly (string | undefined)[]).includes(style);
}

const HORIZONTALS: Readonly<Record<string, StyleModel["horizontal"]>> = {
  left: "left",
  center: "center",
  centerContinuous: "center",
  right: "right",
  justify: "justify",
  distributed: "distributed",
};
const VERTICALS: Readonly<Record<string, StyleModel["vertical"]>> = {
  top: "top",
  center: "middle",
  bottom: "bottom",
};

function readAlignment(alignment: XmlElement | undefined): StyleModel {
  if (!alignment) return {};
  const horizontal = HORIZONTALS[alignment.attributes.horizontal ?? ""];
  const vertical = VERTICALS[alignment.attributes.vertical ?? ""];
  const indent = numberOf(alignment, "indent") ?? 0;
  const turn = turnOf(numberOf(alignment, "textRotation") ?? 0);
  return {
    ...(horizontal && { horizontal }),
    ...(vertical && { vertical }),
    ...(flagOf(alignment, "wrapText") && { wrap: true }),
    ...(indent > 0 && { indent }),
    ...(turn !== undefined && { turn }),
  };
}

/** A file turns text up by 0 to 90 degrees, down by 91 to 180 less 90, and stacks letters by 255. */
function turnOf(written: number): StyleModel["turn"] {
  if (written === 255) return "stacked";
  if (written <= 0 || written > 180) return undefined;
  return written <= 90 ? written : 90 - written;
}
