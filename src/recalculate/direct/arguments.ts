import { onlyCell } from "../../cells";
import type { CellValue } from "../../xlsx/model";
import type { ReadSheet } from "../../xlsx/read/sheet";
import type { Values } from "../values";
import type { DirectArgument, DirectCall, RangeArgument } from "./parseCall";

/**
 * The arguments of a call as our functions take them: cells of a reference as rows, even those of one
 * cell, a value that is written out by itself, and nothing for an argument that was left out.
 */
export function readArguments(
  { given }: DirectCall,
  sheetNamed: (name: string) => ReadSheet | undefined,
  values: Values,
): unknown[] {
  const ranges = given.filter(isRange);
  const lastRow = furthest(ranges, "columns");
  const lastColumn = furthest(ranges, "rows");
  return given.map((argument) => {
    switch (argument.kind) {
      case "omitted":
        return undefined;
      case "value":
        return argument.value;
      case "array":
        return argument.rows;
      case "range":
        return readRange(argument);
    }
  });

  /** All the whole columns of a call end at one row, so that columns of unequal length still pair up. */
  function furthest(ranges: readonly RangeArgument[], whole: RangeArgument["whole"]): number {
    const side = whole === "columns" ? "row" : "column";
    return ranges
      .filter((range) => range.whole === whole)
      .reduce((last, { sheet, area }) => {
        const found = sheet === undefined ? undefined : sheetNamed(sheet);
        return found ? Math.max(last, values.last(found, area, side)) : last;
      }, 0);
  }

  function readRange({ sheet: name, area, whole, asText }: RangeArgument): unknown {
    const sheet = name === undefined ? undefined : sheetNamed(name);
    if (!sheet) return "#REF!";
    const endRow = whole === "columns" ? lastRow : area.endRow;
    const endColumn = whole === "rows" ? lastColumn : area.endColumn;
    const rows: CellValue[][] = [];
    for (let row = area.startRow; row <= endRow; row++) {
      const cells: CellValue[] = [];
      for (let column = area.startColumn; column <= endColumn; column++) {
        const value = values.at(sheet, row, column);
        cells.push(asText ? textOf(value) : value);
      }
      rows.push(cells);
    }
    // What is made of one cell is a value, no longer a reference.
    return (asText ? onlyCell(rows) : undefined) ?? rows;
  }
}

const isRange = (argument: DirectArgument): argument is RangeArgument => argument.kind === "range";

/** A cell's text, in which a number has the 15 digits that a spreadsheet gives it. */
function textOf(value: CellValue): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string") return value;
  return String(Number(value.toPrecision(15)));
}
