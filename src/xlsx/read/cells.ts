import type { ICellData, IStyleData } from "@univerjs/core";
import { CellValueType } from "@univerjs/core";
import type { Area } from "../../formula/address";
import { parseArea, parseCell } from "../../formula/address";
import { fromFile } from "../../formula/future";
import { shiftFormula } from "../../formula/shift";
import type { Table } from "../../formula/tables";
import { resolveTables } from "../../formula/tables";
import { daysFrom1900To1904, isDateFormat } from "../numberFormats";
import type { XmlElement } from "../package";
import { childOf, numberOf } from "../package";
import { fromFileText, textOfItem } from "../strings";

/** What a sheet's cells need to know of the workbook around them. */
export interface Surroundings {
  readonly strings: readonly string[];
  readonly styles: readonly IStyleData[];
  readonly tables: readonly Table[];
  readonly countsFrom1904: boolean;
}

/** A cell where it stands. */
export interface PlacedCell {
  readonly row: number;
  readonly column: number;
  readonly content: ICellData;
}

/**
 * Reads the cells of one sheet, row by row, from the top: formulas shared between cells and the
 * cells that a formula spills over are told by what came before them.
 */
export function cellReader(sheet: string, { strings, styles, tables, ...book }: Surroundings) {
  const shared = new Map<string, { formula: string; row: number; column: number }>();
  const spills: Area[] = [];
  let row = -1;

  /** The cells of a row; a row or a cell that names no place follows the one before. */
  return function readRow(element: XmlElement): { row: number; cells: PlacedCell[] } {
    row = (numberOf(element, "r") ?? row + 2) - 1;
    let column = -1;
    const cells = element.children
      .filter(({ name }) => name === "c")
      .map((cell) => {
        const place = parseCell(cell.attributes.r ?? "") ?? { row, column: column + 1 };
        column = place.column;
        return { row, column, content: readCell(cell, column) };
      });
    return { row, cells };
  };

  function readCell(cell: XmlElement, column: number): ICellData {
    const style = numberOf(cell, "s") ?? 0;
    const content: ICellData = style in styles ? { s: String(style) } : {};
    const formula = readFormula(cell, column);
    if (formula !== undefined) content.f = `=${formula}`;
    else if (spills.some((area) => contains(area, row, column))) return content;
    return { ...content, ...readValue(cell, style) };
  }

  function readFormula(cell: XmlElement, column: number): string | undefined {
    const element = childOf(cell, "f");
    if (!element) return undefined;
    const { t: kind, si, ref } = element.attributes;
    // A what-if table has no formula in the cells that it fills, only their values.
    if (kind === "dataTable") return undefined;
    const origin = kind === "shared" && element.text === "" ? shared.get(si) : undefined;
    const written = origin
      ? shiftFormula(origin.formula, row - origin.row, column - origin.column)
      : fromFileText(element.text);
    if (written === "") return undefined;
    if (kind === "shared" && !origin) shared.set(si, { formula: written, row, column });
    const area = kind === "array" ? parseArea(ref ?? "") : undefined;
    if (area) spills.push(area);
    return resolveTables(fromFile(written), tables, { sheet, row, column });
  }

  function readValue(cell: XmlElement, style: number): ICellData {
    const written = childOf(cell, "v")?.text;
    switch (cell.attributes.t ?? "n") {
      case "s":
        return text(strings[Number(written)]);
      case "inlineStr":
        return text(textOfItem(childOf(cell, "is")));
      case "str":
        return text(written === undefined ? undefined : fromFileText(written));
      case "e":
        return text(written);
      case "b":
        if (written === undefined) return {};
        return { v: written === "1" || written === "true" ? 1 : 0, t: CellValueType.BOOLEAN };
      case "d":
        return number(dayOf(written));
      default:
        return number(written ? Number(written) + shiftOfDays(style) : undefined);
    }
  }

  function shiftOfDays(style: number): number {
    const pattern = styles[style]?.n?.pattern;
    return book.countsFrom1904 && pattern && isDateFormat(pattern) ? daysFrom1900To1904 : 0;
  }
}

function text(value: string | undefined): ICellData {
  return value === undefined ? {} : { v: value, t: CellValueType.STRING };
}

function number(value: number | undefined): ICellData {
  return value === undefined || !Number.isFinite(value)
    ? {}
    : { v: value, t: CellValueType.NUMBER };
}

/** A date that is written out, "2026-01-05T09:30:00", as the day's number. */
function dayOf(written: string | undefined): number | undefined {
  if (written === undefined) return undefined;
  const zone = /T.*(?:Z|[+-]\d\d:?\d\d)$/.test(written) || !written.includes("T") ? "" : "Z";
  return (Date.parse(written + zone) - Date.UTC(1899, 11, 30)) / 86_400_000;
}

function contains(area: Area, row: number, column: number): boolean {
  return (
    row >= area.startRow &&
    row <= area.endRow &&
    column >= area.startColumn &&
    column <= area.endColumn
  );
}
