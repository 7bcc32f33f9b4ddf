import { readEmptyTextAsText } from "./cellReading";
import { compareCellByCell } from "./columnIndex";
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
  sortTruthValuesLast();
}

let corrected = false;
