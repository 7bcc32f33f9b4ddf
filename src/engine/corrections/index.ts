import type { IFunctionService } from "@univerjs/engine-formula";
import { showBlanksAsZero } from "./blankResults";
import { readEmptyTextAsText } from "./cellReading";
import { compareCellByCell } from "./columnIndex";
import { failAlone } from "./failures";
import { correctedFunctions } from "./functions";
import { readLiteralsAsWritten } from "./literals";
import { compareTextLiterally, joinAsShown, passErrorsOn } from "./operators";
import { readRangesIntoOwnArrays } from "./ownArrays";
import { parseCopies } from "./parsing";
import { sortTruthValuesLast } from "./truthValues";

/**
 * Puts right what the spreadsheet's engine gets wrong, for every workbook that is opened: its own
 * classes are changed once, by their published names alone, and functions are registered over its own.
 */
export function correctEngine(functions: IFunctionService): void {
  if (!corrected) {
    corrected = true;
    compareCellByCell();
    readEmptyTextAsText();
    showBlanksAsZero();
    readRangesIntoOwnArrays();
    sortTruthValuesLast();
    passErrorsOn();
    joinAsShown();
    compareTextLiterally();
    readLiteralsAsWritten();
    parseCopies();
    failAlone();
  }
  functions.registerExecutors(...correctedFunctions());
}

let corrected = false;
