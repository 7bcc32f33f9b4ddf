import { parseArea } from "../../formula/address";
import { shifterOf } from "../../formula/shift";
import type { FormulaKind, FormulaModel } from "../model";
import type { XmlElement } from "../package";
import { attributeOf, childOf, numberOf } from "../package";
import type { Tally } from "./bounds";

/** A formula read from a file. */
export interface ReadFormula extends FormulaModel {
  /** Which of the sheet's shared formulas this is. */
  readonly group?: number;
}

/** Reads a cell's formula, if it has one. */
export type FormulaReader = (
  cell: XmlElement,
  row: number,
  column: number,
) => ReadFormula | undefined;

/**
 * The reader of one sheet's formulas, from the top: of cells that share one the first has its text, and
 * for the others it is written out as it reads there.
 */
export function formulaReader(sheet: string, tally: Tally): FormulaReader {
  const shared = new Map<
    number,
    { shift: ReturnType<typeof shifterOf>; row: number; column: number }
  >();
  return (cell, row, column) => {
    const element = childOf(cell, "f");
    if (!element) return undefined;
    const { t: type } = element.attributes;
    const kind = kindOf(type, attributeOf(cell, "cm") !== undefined);
    const group = type === "shared" ? (numberOf(element, "si") ?? -1) : undefined;
    const text = textOf(element, group);
    if (text === "" && kind !== "data table") return undefined;
    const own = { startRow: row, startColumn: column, endRow: row, endColumn: column };
    const filled = kind === "one cell" ? undefined : parseArea(element.attributes.ref ?? "");
    tally.formula(sheet, row, column, text, filled ?? own);
    return { text, kind, area: filled ?? own, ...(group !== undefined && { group }) };

    function textOf({ text: written }: XmlElement, group: number | undefined): string {
      if (group === undefined) return written;
      if (written !== "") shared.set(group, { shift: shifterOf(written), row, column });
      const first = shared.get(group);
      return first ? first.shift(row - first.row, column - first.column) : "";
    }
  };
}

/** A formula for an array is one that spills where the cell's metadata says so. */
function kindOf(type: string | undefined, marked: boolean): FormulaKind {
  if (type === "dataTable") return "data table";
  if (type !== "array") return "one cell";
  return marked ? "spilling" : "fixed array";
}
