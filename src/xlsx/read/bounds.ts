import { shortened } from "../../cells/text";
import type { Area } from "../../formula/address";
import { areaAddress, cellAddress, isSeveralCells, quoteSheet } from "../../formula/address";
import { LIMITS } from "../limits";
import { UnreadableFile } from "../package";

/** A cell by its sheet's name, for a message. */
export const placeOf = (sheet: string, row: number, column: number): string =>
  `${quoteSheet(sheet)}!${cellAddress(row, column)}`;

/** The number of a row or a column of a sheet from 1 on as it is written, or a refusal. */
export function lineNumber(written: string, last: number, what: string): number {
  const number = /^\d{1,7}$/.test(written) ? Number(written) : 0;
  if (number >= 1 && number <= last + 1) return number;
  throw new UnreadableFile(
    `${what} "${shortened(written)}"; expected a whole number from 1 to ${last + 1}`,
  );
}

/** What a workbook's cells take up, added up while it is read. */
export interface Tally {
  /** Counts a formula, and the cells that it fills. */
  formula(sheet: string, row: number, column: number, text: string, fills: Area): void;
  /** Counts the cells of a merged range. */
  merge(sheet: string, area: Area): void;
}

/** Holds a workbook's formulas, the cells that they fill and its merged ranges to what a computer has room for. */
export function createTally(): Tally {
  let characters = 0;
  let filled = 0;
  let merged = 0;
  return {
    formula(sheet, row, column, text, fills) {
      const place = () => placeOf(sheet, row, column);
      checkLength(place, text);
      characters += text.length;
      if (characters > LIMITS.formulaText) {
        refuse(
          place,
          `ends more text of formulas than the ${LIMITS.formulaText} characters that can be read`,
        );
      }
      if (!isSeveralCells(fills)) return;
      filled += cellCount(fills);
      if (filled <= LIMITS.arrayCells) return;
      const area = areaAddress(fills);
      refuse(
        place,
        `has a formula that fills ${area}; all formulas may fill ${LIMITS.arrayCells} cells together`,
      );
    },
    merge(sheet, area) {
      merged += cellCount(area);
      if (merged <= LIMITS.mergedCells) return;
      const place = () => `${quoteSheet(sheet)}!${areaAddress(area)}`;
      refuse(
        place,
        `is one merged cell; all of them may cover ${LIMITS.mergedCells} cells together`,
      );
    },
  };
}

/** Refuses a formula, or what a name stands for, by its length alone. */
export function checkLength(place: () => string, formula: string): void {
  if (formula.length <= LIMITS.formulaLength) return;
  const most = `at most ${LIMITS.formulaLength} can be read`;
  refuse(place, `has a formula of ${formula.length} characters; ${most}`);
}

/** A file is refused for what stands at a place in it. */
export function refuse(place: () => string, why: string): never {
  throw new UnreadableFile(`${place()} ${why}`);
}

export const cellCount = ({ startRow, startColumn, endRow, endColumn }: Area): number =>
  (endRow - startRow + 1) * (endColumn - startColumn + 1);

/** A size in its usual measure, held to what a sheet can show. */
export const within = (least: number, size: number, most: number): number =>
  Math.min(Math.max(least, size), most);
