import { parseCell } from "../../formula/address";
import type { CellModel, RowModel } from "../model";
import type { XmlElement } from "../package";
import { flagOf, numberOf } from "../package";
import { pixelsOfPoints } from "../units";
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
export function rowReader(readValue: ValueReader): (element: XmlElement) => ReadRow {
  const readFormula = formulaReader();
  let row = -1;
  return (element) => {
    row = (numberOf(element, "r") ?? row + 2) - 1;
    const cells: ReadCell[] = [];
    let column = -1;
    for (const child of element.children) {
      if (child.name !== "c") continue;
      column = parseCell(child.attributes.r ?? "")?.column ?? column + 1;
      cells.push(readCell(child, column));
    }
    const { start, contentStart, end } = element;
    return {
      row,
      cells: inOrder(cells, (cell) => cell.column),
      ...lookOf(element),
      start,
      contentStart,
      end,
    };
  };

  function readCell(element: XmlElement, column: number): ReadCell {
    const style = numberOf(element, "s") ?? 0;
    const value = readValue(element, row, column);
    const formula = readFormula(element, row, column);
    const { start, end } = element;
    return formula
      ? { row, column, style, value, formula, start, end }
      : { row, column, style, value, start, end };
  }
}

function lookOf(element: XmlElement): Omit<RowModel, "row" | "cells"> {
  const points = numberOf(element, "ht");
  return {
    ...(points !== undefined && {
      height: pixelsOfPoints(points),
      heightIsChosen: flagOf(element, "customHeight"),
    }),
    ...(flagOf(element, "hidden") && { hidden: true }),
    ...(flagOf(element, "customFormat") && { style: numberOf(element, "s") ?? 0 }),
  };
}
