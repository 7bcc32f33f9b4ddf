import type { IBorderData, IBorderStyleData, IStyleData, Nullable } from "@univerjs/core";
import {
  BaselineOffset,
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import type { BorderSide, LineModel, LineStyle, StyleModel } from "../../xlsx/model";
import { hexColor } from "./color";

/** How a cell looks, in the engine's words. */
export function styleData(style: StyleModel): IStyleData {
  const { font, size, color, fill, raised, borders, horizontal, vertical, indent, turn } = style;
  return {
    ...(font && { ff: font }),
    ...(size !== undefined && { fs: size }),
    ...(color && { cl: { rgb: color } }),
    ...(style.bold && { bl: BooleanNumber.TRUE }),
    ...(style.italic && { it: BooleanNumber.TRUE }),
    ...(style.underline && { ul: { s: BooleanNumber.TRUE } }),
    ...(style.strike && { st: { s: BooleanNumber.TRUE } }),
    ...(raised && { va: OFFSETS[raised] }),
    ...(fill && { bg: { rgb: fill } }),
    ...(borders && { bd: bordersData(borders) }),
    ...(horizontal && { ht: HORIZONTALS[horizontal] }),
    ...(vertical && { vt: VERTICALS[vertical] }),
    ...(style.wrap && { tb: WrapStrategy.WRAP }),
    ...(indent && { pd: { [horizontal === "right" ? "r" : "l"]: indent * INDENT_STEP } }),
    ...(turn !== undefined && { tr: turnData(turn) }),
    ...(style.format && { n: { pattern: style.format } }),
  };
}

/** The same of a style that the engine keeps, where also a page's own spellings occur. */
export function styleModel(data: IStyleData): StyleModel {
  const { ff, fs, cl, bg, bd, ht, vt, pd, va } = data;
  const horizontal = ht ? HORIZONTAL_NAMES.get(ht) : undefined;
  const vertical = vt ? nameOf(VERTICALS, vt) : undefined;
  const indent = Math.round(((horizontal === "right" ? pd?.r : pd?.l) ?? 0) / INDENT_STEP);
  const turn = turnModel(data.tr);
  const color = hexColor(cl?.rgb);
  const fill = hexColor(bg?.rgb);
  const raised = va ? nameOf(OFFSETS, va) : undefined;
  const borders = bordersModel(bd);
  return {
    // A page may name several fonts to fall back on; a file names one.
    ...(ff && { font: ff.replace(/,.*/s, "").replace(/["']/g, "").trim() }),
    ...(fs && { size: fs }),
    ...(color && { color }),
    ...(data.bl === BooleanNumber.TRUE && { bold: true }),
    ...(data.it === BooleanNumber.TRUE && { italic: true }),
    ...(data.ul?.s === BooleanNumber.TRUE && { underline: true }),
    ...(data.st?.s === BooleanNumber.TRUE && { strike: true }),
    ...(raised && { raised }),
    ...(fill && { fill }),
    ...(borders && { borders }),
    ...(horizontal && { horizontal }),
    ...(vertical && { vertical }),
    ...(data.tb === WrapStrategy.WRAP && { wrap: true }),
    ...(indent > 0 && { indent }),
    ...(turn !== undefined && { turn }),
    ...(data.n?.pattern && { format: data.n.pattern }),
  };
}

const OFFSETS = { superscript: BaselineOffset.SUPERSCRIPT, subscript: BaselineOffset.SUBSCRIPT };

const HORIZONTALS = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
  justify: HorizontalAlign.JUSTIFIED,
  distributed: HorizontalAlign.DISTRIBUTED,
};
const HORIZONTAL_NAMES = new Map([
  ...Object.entries(HORIZONTALS).map(
    ([name, code]) => [code, name as StyleModel["horizontal"]] as const,
  ),
  [HorizontalAlign.BOTH, "justify"] as const,
]);

const VERTICALS = {
  top: VerticalAlign.TOP,
  middle: VerticalAlign.MIDDLE,
  bottom: VerticalAlign.BOTTOM,
};

function nameOf<Name extends string, Code>(codes: Record<Name, Code>, code: Code) {
  return (Object.keys(codes) as Name[]).find((name) => codes[name] === code);
}

/** An indent is counted in steps of three spaces of the usual font, in pixels. */
const INDENT_STEP = 9;

/** The engine turns down by degrees. */
function turnData(turn: NonNullable<StyleModel["turn"]>): IStyleData["tr"] {
  return turn === "stacked" ? { a: 0, v: BooleanNumber.TRUE } : { a: -turn };
}

function turnModel(turn: IStyleData["tr"]): StyleModel["turn"] {
  if (turn?.v === BooleanNumber.TRUE) return "stacked";
  return turn?.a ? -turn.a : undefined;
}

const SIDES: Readonly<Record<BorderSide, "t" | "b" | "l" | "r">> = {
  top: "t",
  bottom: "b",
  left: "l",
  right: "r",
};

const LINES: Readonly<Record<LineStyle, BorderStyleTypes>> = {
  thin: BorderStyleTypes.THIN,
  hair: BorderStyleTypes.HAIR,
  dotted: BorderStyleTypes.DOTTED,
  dashed: BorderStyleTypes.DASHED,
  dashDot: BorderStyleTypes.DASH_DOT,
  dashDotDot: BorderStyleTypes.DASH_DOT_DOT,
  double: BorderStyleTypes.DOUBLE,
  medium: BorderStyleTypes.MEDIUM,
  mediumDashed: BorderStyleTypes.MEDIUM_DASHED,
  mediumDashDot: BorderStyleTypes.MEDIUM_DASH_DOT,
  mediumDashDotDot: BorderStyleTypes.MEDIUM_DASH_DOT_DOT,
  slantDashDot: BorderStyleTypes.SLANT_DASH_DOT,
  thick: BorderStyleTypes.THICK,
};

function bordersData(borders: NonNullable<StyleModel["borders"]>): IBorderData {
  return Object.fromEntries(
    Object.entries(borders).map(([side, { style, color }]) => [
      SIDES[side as BorderSide],
      { s: LINES[style], cl: { rgb: color } },
    ]),
  );
}

function bordersModel(borders: Nullable<IBorderData>): StyleModel["borders"] {
  const drawn = Object.entries(SIDES).flatMap(([side, key]) => {
    const line = lineModel(borders?.[key]);
    return line ? [[side, line]] : [];
  });
  return drawn.length > 0 ? (Object.fromEntries(drawn) as StyleModel["borders"]) : undefined;
}

function lineModel(line: Nullable<IBorderStyleData>): LineModel | undefined {
  const style = line ? nameOf(LINES, line.s) : undefined;
  return style && { style, color: hexColor(line?.cl?.rgb) ?? "#000000" };
}
