import type { LineModel, StyleModel } from "../model";
import { BUILT_IN_FORMATS } from "../numberFormats";
import { writeXml } from "../package";
import { MAIN_NAMESPACE } from "./namespaces";

/** Collects how cells look while the sheets are written. */
export interface StyleSheet {
  /** The number under which cells name this look. */
  numberOf(style: StyleModel): number;
  /** The styles part, once every look has a number. */
  write(): string;
}

/** What a cell looks like of which nothing else is said. */
const PLAIN_FONT: StyleModel = { font: "Calibri", size: 11 };

/** Starts a style sheet; look 0 is that of cells nobody has touched. */
export function createStyleSheet(untouched: StyleModel): StyleSheet {
  const fonts = listed();
  const fills = listed();
  const borders = listed();
  const formats = listed();
  const looks = listed();

  fills.indexOf(writeXml("fill", {}, writeXml("patternFill", { patternType: "none" })));
  fills.indexOf(writeXml("fill", {}, writeXml("patternFill", { patternType: "gray125" })));
  borders.indexOf(writeBorder({}));
  numberOf(untouched);

  function numberOf(style: StyleModel): number {
    const complete = { ...PLAIN_FONT, ...style };
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
    const known = SAME_EVERYWHERE.find((id) => BUILT_IN_FORMATS[id] === pattern);
    return known ?? FIRST_OWN_FORMAT + formats.indexOf(pattern);
  }

  return {
    numberOf,
    write() {
      const patterns = formats
        .all()
        .map((formatCode, index) =>
          writeXml("numFmt", { numFmtId: FIRST_OWN_FORMAT + index, formatCode }),
        );
      const ofStyles = { numFmtId: 0, fontId: 0, fillId: 0, borderId: 0 };
      return writeXml("styleSheet", { xmlns: MAIN_NAMESPACE }, [
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
const FIRST_OWN_FORMAT = 164;

/** Of those, the ones that no program shows in its own country's way. */
const SAME_EVERYWHERE = [1, 2, 3, 4, 9, 10, 11, 49];

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

function patternOf({ format }: StyleModel): string | undefined {
  if (!format || format.toLowerCase() === "general") return undefined;
  return /^@+$/.test(format) ? "@" : format;
}

function writeFont({ font, size, color, raised, ...style }: StyleModel): string {
  const rgb = argb(color);
  return writeXml("font", {}, [
    style.bold ? writeXml("b") : "",
    style.italic ? writeXml("i") : "",
    style.strike ? writeXml("strike") : "",
    style.underline ? writeXml("u") : "",
    raised ? writeXml("vertAlign", { val: raised }) : "",
    writeXml("sz", { val: size }),
    rgb ? writeXml("color", { rgb }) : "",
    writeXml("name", { val: font }),
  ]);
}

function writeFill({ fill }: StyleModel): string {
  const color = argb(fill);
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

function writeBorder({ borders }: StyleModel): string {
  const side = (name: string, line: LineModel | undefined) =>
    line
      ? writeXml(name, { style: line.style }, writeXml("color", { rgb: argb(line.color) }))
      : writeXml(name);
  return writeXml("border", {}, [
    side("left", borders?.left),
    side("right", borders?.right),
    side("top", borders?.top),
    side("bottom", borders?.bottom),
    writeXml("diagonal"),
  ]);
}

function writeAlignment({ horizontal, vertical, wrap, indent = 0, turn }: StyleModel): string {
  const attributes = {
    // Only text that is put to a side can be indented.
    horizontal: horizontal ?? (indent > 0 ? "left" : undefined),
    vertical: vertical === "middle" ? "center" : vertical,
    textRotation: rotation(turn),
    wrapText: wrap ? 1 : undefined,
    indent: indent > 0 && horizontal !== "center" ? indent : undefined,
  };
  const said = Object.values(attributes).some((value) => value !== undefined);
  return said ? writeXml("alignment", attributes) : "";
}

function rotation(turn: StyleModel["turn"]): number | undefined {
  if (turn === "stacked") return 255;
  const degrees = Math.round(turn ?? 0);
  if (degrees === 0 || Math.abs(degrees) > 90) return undefined;
  return degrees > 0 ? degrees : 90 - degrees;
}

/** A colour as a file writes it, of "#rrggbb". */
export function argb(color: string | undefined): string | undefined {
  const [, digits] = /^#([0-9a-f]{6})$/i.exec(color ?? "") ?? [];
  return digits && `FF${digits}`.toUpperCase();
}
