import { readEmptyTextAsText } from "./cellReading";
import { compareCellByCell } from "./columnIndex";
import { failAlone } from "./failures";
import { readRangesIntoOwnArrays } from "./ownArrays";
import { sortTruthValuesLast } from "./truthValues";

/**
 * Puts right what the spreadsheet's engine gets wrong, for every workbook that is opened. It changes
 * the engine's own classes, once, and by their published names alone.
 */
export function correctEngine(): void {
  if (corrected) return;
  corrected = true;
  compareCellByCell();
  readEmptyTextAsText();
  readRangesIntoOwnArrays();
  sortTruthValuesLast();
  failAlone();
}

let corrected = false;
