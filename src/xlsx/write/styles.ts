import type { IBorderStyleData, IStyleData, Nullable } from "@univerjs/core";
import {
  BaselineOffset,
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import { indentStep, lineStyles } from "../looks";
import { builtInFormats } from "../numberFormats";
import { writeXml } from "../package";
import { mainNamespace } from "./namespaces";

/** Collects how cells look while the sheets are written. */
export interface StyleSheet {
  /** The number under which cells name this look. */
  numberOf(style: IStyleData): number;
  /** The styles part, once every look has a number. */
  write(): string;
}

/** What a cell looks like of which nothing else is said. */
const plainFont: IStyleData = { ff: "Calibri", fs: 11 };

/** Starts a style sheet; look 0 is that of cells nobody has touched. */
export function createStyleSheet(untouched: Nullable<IStyleData>): StyleSheet {
  const fonts = listed();
  const fills = listed();
  const borders = listed();
  const formats = listed();
  const looks = listed();

  fills.indexOf(writeXml("fill", {}, writeXml("patternFill", { patternType: "none" })));
  fills.indexOf(writeXml("fill", {}, writeXml("patternFill", { patternType: "gray125" })));
  borders.indexOf(writeBorder({}));
  numberOf({ ...untouched });

  function numberOf(style: IStyleData): number {
    const complete = { ...plainFont, ...withoutEmpty(style) };
    const pattern = patternOf(complete);
    const alignment = writeAlignment(complete);
    const fontId = fonts.indexOf(writeFont(complete));
    const fillId = fills.indexOf(writeFill(complete));
    const borderId = borders.indexOf(writeBorder(complete));
    const numFmtId = pattern === undefined ? 0 : formatNumber(pattern);
    const attributes = {
      ...{ numFmtId, fontId, fillId, borderId, xfId: 0 },
      applyNumberFormat: numFmtId > 0 ? 1 : undefined,
      applyFont: fontId > 0 ? 1 : undefined,
      applyFill: fillId > 0 ? 1 : undefined,
      applyBorder: borderId > 0 ? 1 : undefined,
      applyAlignment: alignment === "" ? undefined : 1,
    };
    return looks.indexOf(writeXml("xf", attributes, alignment));
  }

  function formatNumber(pattern: string): number {
    const known = sameEverywhere.find((id) => builtInFormats[id] === pattern);
    return known ?? firstOwnFormat + formats.indexOf(pattern);
  }

  return {
    numberOf,
    write() {
      const patterns = formats
        .all()
        .map((formatCode, index) =>
          writeXml("numFmt", { numFmtId: firstOwnFormat + index, formatCode }),
        );
      const ofStyles = { numFmtId: 0, fontId: 0, fillId: 0, borderId: 0 };
      return writeXml("styleSheet", { xmlns: mainNamespace }, [
        patterns.length > 0 ? writeXml("numFmts", { count: patterns.length }, patterns) : "",
        writeXml("fonts", { count: fonts.all().length }, fonts.all()),
        writeXml("fills", { count: fills.all().length }, fills.all()),
        writeXml("borders", { count: borders.all().length }, borders.all()),
        writeXml("cellStyleXfs", { count: 1 }, writeXml("xf", ofStyles)),
        writeXml("cellXfs", { count: looks.all().length }, looks.all()),
        writeXml(
          "cellStyles",
          { count: 1 },
          writeXml("cellStyle", { name: "Normal", xfId: 0, builtinId: 0 }),
        ),
      ]);
    },
  };
}

/** Below this, the numbers of formats are the programs' own. */
const firstOwnFormat = 164;

/** Of those, the ones that no program shows in its own country's way. */
const sameEverywhere = [1, 2, 3, 4, 9, 10, 11, 49];

/** A list in which everything stands once. */
function listed() {
  const places = new Map<string, number>();
  return {
    indexOf(item: string): number {
      const place = places.get(item) ?? places.size;
      places.set(item, place);
      return place;
    },
    all: () => [...places.keys()],
  };
}

function withoutEmpty(style: IStyleData): IStyleData {
  return Object.fromEntries(
    Object.entries(style).filter(([, value]) => value !== null && value !== undefined),
  ) as IStyleData;
}

function patternOf({ n }: IStyleData): string | undefined {
  const pattern = n?.pattern;
  if (!pattern || pattern.toLowerCase() === "general") return undefined;
  return /^@+$/.test(pattern) ? "@" : pattern;
}

function writeFont(style: IStyleData): string {
  const raised = {
    [BaselineOffset.SUPERSCRIPT]: "superscript",
    [BaselineOffset.SUBSCRIPT]: "subscript",
  };
  const vertical = raised[style.va as keyof typeof raised];
  const color = argb(style.cl?.rgb);
  return writeXml("font", {}, [
    style.bl === BooleanNumber.TRUE ? writeXml("b") : "",
    style.it === BooleanNumber.TRUE ? writeXml("i") : "",
    style.st?.s === BooleanNumber.TRUE ? writeXml("strike") : "",
    style.ul?.s === BooleanNumber.TRUE ? writeXml("u") : "",
    vertical ? writeXml("vertAlign", { val: vertical }) : "",
    writeXml("sz", { val: style.fs ?? 11 }),
    color ? writeXml("color", { rgb: color }) : "",
    // A page may name several fonts to fall back on; a file names one.
    writeXml("name", { val: (style.ff ?? "Calibri").split(",")[0].replace(/["']/g, "").trim() }),
  ]);
}

function writeFill(style: IStyleData): string {
  const color = argb(style.bg?.rgb);
  return writeXml(
    "fill",
    {},
    color
      ? writeXml("patternFill", { patternType: "solid" }, [
          writeXml("fgColor", { rgb: color }),
          writeXml("bgColor", { indexed: 64 }),
        ])
      : writeXml("patternFill", { patternType: "none" }),
  );
}

function writeBorder({ bd }: IStyleData): string {
  const side = (name: string, line: Nullable<IBorderStyleData>) => {
    const style = Object.keys(lineStyles).find((key) => lineStyles[key] === line?.s);
    if (!line || !style || line.s === BorderStyleTypes.NONE) return writeXml(name);
    const color = argb(line.cl?.rgb) ?? "FF000000";
    return writeXml(name, { style }, writeXml("color", { rgb: color }));
  };
  return writeXml("border", {}, [
    side("left", bd?.l),
    side("right", bd?.r),
    side("top", bd?.t),
    side("bottom", bd?.b),
    writeXml("diagonal"),
  ]);
}

const horizontal: Partial<Record<HorizontalAlign, string>> = {
  [HorizontalAlign.LEFT]: "left",
  [HorizontalAlign.CENTER]: "center",
  [HorizontalAlign.RIGHT]: "right",
  [HorizontalAlign.JUSTIFIED]: "justify",
  [HorizontalAlign.BOTH]: "justify",
  [HorizontalAlign.DISTRIBUTED]: "distributed",
};
const vertical: Partial<Record<VerticalAlign, string>> = {
  [VerticalAlign.TOP]: "top",
  [VerticalAlign.MIDDLE]: "center",
  [VerticalAlign.BOTTOM]: "bottom",
};

function writeAlignment({ ht, vt, tb, pd, tr }: IStyleData): string {
  const side = ht ? horizontal[ht] : undefined;
  const indent = Math.round(((side === "right" ? pd?.r : pd?.l) ?? 0) / indentStep);
  const attributes = {
    // Only text that is put to a side can be indented.
    horizontal: side ?? (indent > 0 ? "left" : undefined),
    vertical: vt ? vertical[vt] : undefined,
    textRotation: rotation(tr),
    wrapText: tb === WrapStrategy.WRAP ? 1 : undefined,
    indent: indent > 0 && side !== "center" ? indent : undefined,
  };
  const said = Object.values(attributes).some((value) => value !== undefined);
  return said ? writeXml("alignment", attributes) : "";
}

function rotation(turn: IStyleData["tr"]): number | undefined {
  if (turn?.v === BooleanNumber.TRUE) return 255;
  const degrees = Math.round(turn?.a ?? 0);
  if (degrees === 0 || Math.abs(degrees) > 90) return undefined;
  return degrees < 0 ? -degrees : degrees + 90;
}

/** A colour as a file writes it, of one as a page does. */
export function argb(color: Nullable<string>): string | undefined {
  const [, short] = /^#([0-9a-f]{3})$/i.exec(color ?? "") ?? [];
  if (short) return `FF${short.replace(/./g, "$&$&")}`.toUpperCase();
  const [, digits] = /^#([0-9a-f]{6})(?:[0-9a-f]{2})?$/i.exec(color ?? "") ?? [];
  if (digits) return `FF${digits}`.toUpperCase();
  const channels = /^rgba?\(\s*(\d+)[\s,]+(\d+)[\s,]+(\d+)/i.exec(color ?? "")?.slice(1, 4);
  if (!channels) return undefined;
  const hex = channels.map((channel) =>
    Math.min(255, Number(channel)).toString(16).padStart(2, "0"),
  );
  return `FF${hex.join("")}`.toUpperCase();
}
