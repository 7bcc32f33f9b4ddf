import { shortened } from "../../cells/text";
import { cellAddress, LAST_COLUMN, LAST_ROW, parseCell, quoteSheet } from "../../formula/address";
import type { CellModel, RowModel } from "../model";
import type { XmlElement } from "../package";
import { flagOf, numberOf } from "../package";
import { pixelsOfPoints } from "../units";
import { lineNumber, refuse, within, type Tally } from "./bounds";
import type { ReadFormula } from "./formulas";
import { formulaReader } from "./formulas";
import { inOrder } from "./numbered";
import type { ValueReader } from "./values";

/** Where an element stands in its part's text, and where what is inside it starts. */
export interface Place {
  readonly start: number;
  readonly contentStart: number;
  readonly end: number;
}

/** A cell read from a file, with where its element stands, so that it can be changed in place. */
export interface ReadCell extends CellModel {
  readonly formula?: ReadFormula;
  readonly start: number;
  readonly end: number;
}

export interface ReadRow extends RowModel, Place {
  readonly cells: readonly ReadCell[];
}

/**
 * The reader of one sheet's rows, from the top: a row or a cell that does not say where it stands
 * follows the one before.
 */
export function rowReader(
  sheet: string,
  readValue: ValueReader,
  tally: Tally,
): (element: XmlElement) => ReadRow {
  const readFormula = formulaReader(sheet, tally);
  let row = -1;
  return (element) => {
    row = numberOfRow(element, row + 2) - 1;
    const cells: ReadCell[] = [];
    let column = -1;
    for (const child of element.children) {
      if (child.name !== "c") continue;
      column = columnOf(child, column + 1);
      cells.push(readCell(child, column));
    }
    const { start, contentStart, end } = element;
    return {
      row,
      // A list that grew has room for many more; its copy has none, and a long log is made of short rows.
      cells: inOrder(cells, (cell) => cell.column).slice(),
      ...lookOf(element),
      start,
      contentStart,
      end,
    };
  };

  function numberOfRow({ attributes: { r } }: XmlElement, next: number): number {
    return lineNumber(r ?? String(next), LAST_ROW, `${quoteSheet(sheet)}: the file has a row`);
  }

  function columnOf({ attributes: { r } }: XmlElement, next: number): number {
    const at = parseCell(r ?? (next > LAST_COLUMN ? "" : cellAddress(row, next)));
    if (at?.row === row) return at.column;
    const called = r === undefined ? "a cell beyond the last column" : `the cell "${shortened(r)}"`;
    return refuse(() => `${quoteSheet(sheet)}:`, `row ${row + 1} of the file has ${called}`);
  }

  function readCell(element: XmlElement, column: number): ReadCell {
    const style = styleOf(element);
    const value = readValue(element, row, column);
    const formula = readFormula(element, row, column);
    const { start, end } = element;
    return formula
      ? { row, column, style, value, formula, start, end }
      : { row, column, style, value, start, end };
  }
}

function lookOf(element: XmlElement): Omit<RowModel, "row" | "cells"> {
  const written = numberOf(element, "ht");
  const points = written === undefined ? undefined : within(0, written, HIGHEST);
  return {
    ...(points !== undefined && {
      height: pixelsOfPoints(points),
      heightIsChosen: flagOf(element, "customHeight"),
    }),
    ...(flagOf(element, "hidden") && { hidden: true }),
    ...(flagOf(element, "customFormat") && { style: styleOf(element) }),
  };
}

/** Which of the workbook's styles an element names. */
function styleOf(element: XmlElement): number {
  const number = numberOf(element, "s") ?? 0;
  return Number.isInteger(number) && number > 0 ? number : 0;
}

/** In points; no row of a sheet is higher. */
export const HIGHEST = 409.5;
