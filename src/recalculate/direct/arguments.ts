import { onlyCell } from "../../cells";
import { gridOf, type Area } from "../../formula/address";
import type { CellValue } from "../../xlsx/model";
import type { ReadSheet } from "../../xlsx/read/sheet";
import type { Values } from "../values";
import type { DirectArgument, Expression, OurCall, RangeArgument } from "./expression";
import { textOfValue } from "./textOfValue";

/**
 * The arguments of a call as our functions take them: cells of a reference as rows, even those of one
 * cell, a value that is written out by itself, and nothing for an argument that was left out.
 */
export function readArguments(
  { given }: OurCall,
  sheetNamed: (name: string) => ReadSheet | undefined,
  values: Values,
  valueOf: (expression: Expression) => CellValue,
): unknown[] {
  const lastRow = furthest(given, "columns");
  const lastColumn = furthest(given, "rows");
  return given.map((argument) => {
    switch (argument.kind) {
      case "omitted":
        return undefined;
      case "value":
        return argument.value;
      case "array":
        return argument.rows;
      case "computed":
        return valueOf(argument.expression);
      case "range":
        return readRange(argument);
    }
  });

  /** All the whole columns of a call end at one row, so that columns of unequal length still pair up. */
  function furthest(
    given: readonly DirectArgument[],
    whole: Exclude<RangeArgument["whole"], undefined>,
  ): number {
    let last = 0;
    for (const argument of given) {
      if (argument.kind !== "range" || argument.whole !== whole) continue;
      const sheet = argument.sheet === undefined ? undefined : sheetNamed(argument.sheet);
      const side = whole === "columns" ? "row" : "column";
      if (sheet) last = Math.max(last, values.last(sheet, argument.area, side));
    }
    return last;
  }

  function readRange({ sheet: name, area, whole, asText }: RangeArgument): unknown {
    const sheet = name === undefined ? undefined : sheetNamed(name);
    if (!sheet) return "#REF!";
    if (whole === "columns") return cellsOf(sheet, { ...area, endRow: lastRow });
    if (whole === "rows") return cellsOf(sheet, { ...area, endColumn: lastColumn });
    const rows = cellsOf(sheet, area);
    if (!asText) return rows;
    // What is made of one cell is a value, no longer a reference.
    const texts = rows.map((row) => row.map(textOfValue));
    return onlyCell(texts) ?? texts;
  }

  function cellsOf(sheet: ReadSheet, area: Area): CellValue[][] {
    return gridOf(area, (row, column) => values.at(sheet, row, column));
  }
}
