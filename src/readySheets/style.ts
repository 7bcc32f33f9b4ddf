import type { IBorderStyleData, IStyleData } from "@univerjs/core";
import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import type { DemoStyle, DemoWorkbook } from "./format";

/** Builds the spreadsheet's style out of the demo's named ones; each adds to those before it. */
export function styleOf(
  names: readonly string[],
  { styles, colors }: Pick<DemoWorkbook, "styles" | "colors">,
): IStyleData {
  const merged: DemoStyle = Object.assign({}, ...names.map((name) => lookUp(name, styles)));
  return toStyleData(merged, (color) => colorOf(color, colors));
}

/** A colour by its name, or as it is when it is written out. */
export function colorOf(color: string, colors: DemoWorkbook["colors"]): string {
  return color.startsWith("#") ? color : lookUp(color, colors);
}

function lookUp<T>(name: string, record: Readonly<Record<string, T>>): T {
  if (!(name in record)) throw new Error(`the demo's workbook.json does not define "${name}"`);
  return record[name];
}

const horizontal = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
};
const vertical = {
  top: VerticalAlign.TOP,
  middle: VerticalAlign.MIDDLE,
  bottom: VerticalAlign.BOTTOM,
};

function toStyleData(style: DemoStyle, rgb: (color: string) => string): IStyleData {
  const line = (color: string): IBorderStyleData => ({
    s: BorderStyleTypes.THIN,
    cl: { rgb: rgb(color) },
  });
  const data: IStyleData = {};
  if (style.font) data.ff = style.font;
  if (style.size) data.fs = style.size;
  if (style.bold !== undefined) data.bl = flag(style.bold);
  if (style.italic !== undefined) data.it = flag(style.italic);
  if (style.color) data.cl = { rgb: rgb(style.color) };
  if (style.fill) data.bg = { rgb: rgb(style.fill) };
  if (style.align) data.ht = horizontal[style.align];
  if (style.valign) data.vt = vertical[style.valign];
  if (style.wrap !== undefined) data.tb = style.wrap ? WrapStrategy.WRAP : WrapStrategy.OVERFLOW;
  if (style.indent) data.pd = { l: style.indent };
  if (style.format) data.n = { pattern: style.format };
  if (style.top ?? style.bottom) {
    data.bd = {
      ...(style.top && { t: line(style.top) }),
      ...(style.bottom && { b: line(style.bottom) }),
    };
  }
  return data;
}

function flag(value: boolean): BooleanNumber {
  return value ? BooleanNumber.TRUE : BooleanNumber.FALSE;
}
