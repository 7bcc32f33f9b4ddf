import { parseArea, parseCell, type Area } from "../../formula/address";
import { attributeOf, childOf, flagOf, numberOf, parseXml, type XmlElement } from "../package";
import { textOfItem } from "../strings";

/** A stretch of a part's text. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** A cell as a sheet's XML has it, with where it stands, so that it can be changed in place. */
export interface XmlCell extends Stretch {
  readonly row: number;
  readonly column: number;
  readonly contentStart: number;
  /** "n", "s" (a shared string), "str", "inlineStr", "b", "e" or "d". */
  readonly type: string;
  /** What is between `<v>` and `</v>`, or the text of an inline string. */
  readonly value: string | undefined;
  readonly valueAt: Stretch | undefined;
  readonly inlineAt: Stretch | undefined;
  readonly formula: XmlFormula | undefined;
  /** Whether it has cell metadata, which is what marks a formula that spills. */
  readonly dynamic: boolean;
}

/** A formula as it is written: shared ones have their text only in the first cell that uses it. */
export interface XmlFormula extends Stretch {
  readonly contentStart: number;
  readonly text: string;
  /** "normal", "shared", "array" or "dataTable". */
  readonly kind: string;
  readonly area: Area | undefined;
  /** Which shared formula this is. */
  readonly group: number | undefined;
}

export interface XmlRow extends Stretch {
  readonly row: number;
  readonly hidden: boolean;
  readonly contentStart: number;
  readonly cells: readonly XmlCell[];
}

/** A worksheet's XML and what stands where in it. */
export interface SheetXml {
  readonly xml: string;
  /** The prefix of its elements with the colon, for programs that use one. */
  readonly prefix: string;
  readonly rows: readonly XmlRow[];
  /** The element around the rows. */
  readonly data: Stretch & { readonly contentStart: number };
  /** Where the sheet's extent is said, if it is. */
  readonly dimension: XmlElement | undefined;
  /** The worksheet element without its rows. */
  readonly root: XmlElement;
}

/** Reads where the cells of a worksheet stand in its XML. */
export function readSheetXml(xml: string, path: string): SheetXml {
  const rows: XmlRow[] = [];
  const root = parseXml(xml, path, "row", (element) => rows.push(readRow(element, rows.at(-1))));
  const data = childOf(root, "sheetData") ?? {
    start: root.contentStart,
    end: root.contentStart,
    contentStart: root.contentStart,
  };
  const prefix = /^<([\w.-]+:)?/.exec(xml.slice(root.start))?.[1] ?? "";
  return { xml, prefix, rows, data, dimension: childOf(root, "dimension"), root };
}

/** Rows and cells may leave out where they stand: then they follow the one before. */
function readRow(element: XmlElement, before: XmlRow | undefined): XmlRow {
  const row = (numberOf(element, "r") ?? (before?.row ?? -1) + 2) - 1;
  const cells: XmlCell[] = [];
  for (const child of element.children) {
    if (child.name === "c") cells.push(readCell(child, row, cells.at(-1)));
  }
  return { row, cells, hidden: flagOf(element, "hidden"), ...placeOf(element) };
}

function readCell(element: XmlElement, row: number, before: XmlCell | undefined): XmlCell {
  const value = childOf(element, "v");
  const inline = childOf(element, "is");
  const formula = childOf(element, "f");
  const { column } = parseCell(attributeOf(element, "r") ?? "") ?? {
    column: (before?.column ?? -1) + 1,
  };
  return {
    ...placeOf(element),
    row,
    column,
    type: attributeOf(element, "t") ?? "n",
    value: value?.text ?? (inline && textOfItem(inline)),
    valueAt: value && { start: value.start, end: value.end },
    inlineAt: inline && { start: inline.start, end: inline.end },
    formula: formula && readFormula(formula),
    dynamic: attributeOf(element, "cm") !== undefined,
  };
}

function readFormula(element: XmlElement): XmlFormula {
  return {
    ...placeOf(element),
    text: element.text,
    kind: attributeOf(element, "t") ?? "normal",
    area: parseArea(attributeOf(element, "ref") ?? ""),
    group: numberOf(element, "si"),
  };
}

function placeOf({ start, contentStart, end }: XmlElement) {
  return { start, contentStart, end };
}
