import type { IBorderStyleData, IStyleData } from "@univerjs/core";
import {
  BaselineOffset,
  BooleanNumber,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import { indentStep, lineStyles } from "../looks";
import { builtInFormats } from "../numberFormats";
import type { XmlElement } from "../package";
import { childOf, childrenOf, flagOf, numberOf } from "../package";
import type { ColorOf } from "./colors";

/** How a cell looks by the number it names: the formats of the workbook in their own order. */
export function readStyles(styles: XmlElement | undefined, colorOf: ColorOf): IStyleData[] {
  const listed = (name: string) => childOf(styles, name)?.children ?? [];
  const formats: Record<number, string> = { ...builtInFormats };
  for (const format of listed("numFmts")) {
    formats[numberOf(format, "numFmtId") ?? -1] = format.attributes.formatCode ?? "";
  }
  const fonts = listed("fonts").map((font) => readFont(font, colorOf));
  const fills = listed("fills").map((fill) => readFill(fill, colorOf));
  const borders = listed("borders").map((border) => readBorders(border, colorOf));

  return childrenOf(childOf(styles, "cellXfs"), "xf").map((format) => {
    const pattern = formats[numberOf(format, "numFmtId") ?? 0];
    return {
      ...fonts[numberOf(format, "fontId") ?? 0],
      ...fills[numberOf(format, "fillId") ?? 0],
      ...borders[numberOf(format, "borderId") ?? 0],
      ...readAlignment(childOf(format, "alignment")),
      ...(pattern && pattern.toLowerCase() !== "general" && { n: { pattern } }),
    };
  });
}

function readFont(font: XmlElement, colorOf: ColorOf): IStyleData {
  const style: IStyleData = {};
  const has = (name: string) => {
    const child = childOf(font, name);
    return child !== undefined && flagOf(child, "val", true) && child.attributes.val !== "none";
  };
  const name = childOf(font, "name")?.attributes.val;
  const size = childOf(font, "sz");
  const color = colorOf(childOf(font, "color"));
  if (name) style.ff = name;
  if (size) style.fs = numberOf(size, "val") ?? 11;
  if (color) style.cl = { rgb: color };
  if (has("b")) style.bl = BooleanNumber.TRUE;
  if (has("i")) style.it = BooleanNumber.TRUE;
  if (underlined(childOf(font, "u"))) style.ul = { s: BooleanNumber.TRUE };
  if (has("strike")) style.st = { s: BooleanNumber.TRUE };
  const raised = childOf(font, "vertAlign")?.attributes.val;
  if (raised === "superscript") style.va = BaselineOffset.SUPERSCRIPT;
  if (raised === "subscript") style.va = BaselineOffset.SUBSCRIPT;
  return style;
}

/** An underline's value is its kind, and a single line where it names none. */
function underlined(element: XmlElement | undefined): boolean {
  return element !== undefined && element.attributes.val !== "none";
}

function readFill(fill: XmlElement, colorOf: ColorOf): IStyleData {
  const pattern = childOf(fill, "patternFill");
  if (!pattern || (pattern.attributes.patternType ?? "none") === "none") return {};
  // A solid fill has its colour in front; of the patterns, which we do not draw, the ground stays.
  const solid = pattern.attributes.patternType === "solid";
  const color = colorOf(childOf(pattern, solid ? "fgColor" : "bgColor"));
  return color ? { bg: { rgb: color } } : {};
}

function readBorders(border: XmlElement, colorOf: ColorOf): IStyleData {
  const line = (...names: string[]): IBorderStyleData | undefined => {
    const side = border.children.find(({ name }) => names.includes(name));
    const style = lineStyles[side?.attributes.style ?? ""];
    if (style === undefined) return undefined;
    return { s: style, cl: { rgb: colorOf(childOf(side, "color")) ?? "#000000" } };
  };
  const bd = {
    t: line("top"),
    b: line("bottom"),
    l: line("left", "start"),
    r: line("right", "end"),
  };
  const drawn = Object.fromEntries(Object.entries(bd).filter(([, side]) => side));
  return Object.keys(drawn).length > 0 ? { bd: drawn } : {};
}

const horizontal: Readonly<Record<string, HorizontalAlign>> = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  centerContinuous: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
  justify: HorizontalAlign.JUSTIFIED,
  distributed: HorizontalAlign.DISTRIBUTED,
};
const vertical: Readonly<Record<string, VerticalAlign>> = {
  top: VerticalAlign.TOP,
  center: VerticalAlign.MIDDLE,
  bottom: VerticalAlign.BOTTOM,
};

function readAlignment(alignment: XmlElement | undefined): IStyleData {
  if (!alignment) return {};
  const style: IStyleData = {};
  const ht = horizontal[alignment.attributes.horizontal ?? ""];
  const vt = vertical[alignment.attributes.vertical ?? ""];
  const indent = numberOf(alignment, "indent") ?? 0;
  const angle = numberOf(alignment, "textRotation") ?? 0;
  if (ht !== undefined) style.ht = ht;
  if (vt !== undefined) style.vt = vt;
  if (flagOf(alignment, "wrapText")) style.tb = WrapStrategy.WRAP;
  if (indent > 0) {
    const side = ht === HorizontalAlign.RIGHT ? "r" : "l";
    style.pd = { [side]: indent * indentStep };
  }
  // A file turns text up by 0 to 90 and down by 91 to 180; the spreadsheet turns down by degrees.
  if (angle === 255) style.tr = { a: 0, v: BooleanNumber.TRUE };
  else if (angle > 0 && angle <= 180) style.tr = { a: angle <= 90 ? -angle : angle - 90 };
  return style;
}
