import type { IWorkbookData } from "@univerjs/core";
import { LocaleType, LogLevel, Univer } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { deserializeRangeWithSheet } from "@univerjs/engine-formula";
import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import english from "@univerjs/preset-sheets-core/locales/en-US";
import { CalculationMode } from "@univerjs/sheets-formula";
import type { CellContent } from "../inspect";
import { contentOf, messageAt } from "../inspect";
import type { Messages, Place } from "../messages";
import type { FunctionsMetadata, Implementations } from "../metadata";
import { registerFunctions } from "../register";
import { respellWorkbook } from "../respell";
import { theme } from "./theme";

/** The workbook on the page. */
export interface PageWorkbook {
  /** What a cell holds: `readCell("Start", "C11")`. */
  readCell(sheet: string, address: string): CellContent;
  /** Calls back whenever the selected cell, or what it says, may have changed. */
  onChange(listener: () => void): void;
  /** The message of the error in the selected cell, if it shows one of ours. */
  selectedMessage(): string | undefined;
}

/** Opens a workbook in the element with this id. */
export function openSpreadsheet(
  container: string,
  data: IWorkbookData,
  metadata: FunctionsMetadata,
  implementations: Implementations,
): PageWorkbook {
  const univer = new Univer({
    theme,
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: english },
    logLevel: LogLevel.WARN,
  });
  const { plugins } = UniverSheetsCorePreset({
    container,
    ribbonType: "simple",
    formula: { initialFormulaComputing: CalculationMode.FORCED },
  });
  for (const plugin of plugins) {
    const [constructor, options] = Array.isArray(plugin) ? plugin : [plugin];
    univer.registerPlugin(constructor, options);
  }
  const api = FUniver.newAPI(univer);
  const workbook = api.createWorkbook(respellWorkbook(data, "excel"));
  const messages: Messages = registerFunctions(univer, metadata, implementations);

  function selectedPlace(): Place | undefined {
    const cell = workbook.getActiveCell();
    if (!cell) return undefined;
    return {
      unitId: workbook.getId(),
      sheetId: cell.getSheetId(),
      row: cell.getRow(),
      column: cell.getColumn(),
    };
  }

  return {
    readCell(name, address) {
      const sheet = workbook.getSheetByName(name);
      if (!sheet) throw new Error(`no sheet is called "${name}"`);
      const { startRow, startColumn } = deserializeRangeWithSheet(address).range;
      const place = { unitId: workbook.getId(), sheetId: sheet.getSheetId() };
      return contentOf(univer, { ...place, row: startRow, column: startColumn });
    },
    onChange(listener) {
      api.addEvent(api.Event.SelectionChanged, listener);
      api.addEvent(api.Event.ActiveSheetChanged, listener);
      api.getFormula().calculationEnd(listener);
    },
    selectedMessage() {
      const place = selectedPlace();
      return place && messageAt(univer, messages, place);
    },
  };
}
