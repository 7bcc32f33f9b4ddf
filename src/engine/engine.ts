import type { IWorkbookData } from "@univerjs/core";
import { LocaleType, LogLevel, Univer, UniverInstanceType } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { deserializeRangeWithSheet } from "@univerjs/engine-formula";
import { UniverSheetsPlugin } from "@univerjs/sheets";
import { CalculationMode, UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
import "@univerjs/engine-formula/facade";
import "@univerjs/sheets/facade";
import "@univerjs/sheets-formula/facade";
import { allComputed } from "./allComputed";
import { computeAll, WaitlessFormulaEngine } from "./atOnce";
import { computeSoon } from "./computeSoon";
import type { HeadlessWorkbook, OnProgress } from "./headless";
import { contentOf, messageAt } from "./inspect";
import type { Place } from "./messages";
import type { FunctionsMetadata, Implementations } from "./metadata";
import { registerFunctions } from "./register";
import { respellWorkbook } from "./respell";
import { hasCircle } from "./settle";
import { spillAt } from "./spill";

/** Opens a workbook with the formula engine and nothing else: no screen, no toolbar, no mouse. */
export async function openInEngine(
  data: IWorkbookData,
  metadata: FunctionsMetadata,
  implementations: Implementations,
  onProgress?: OnProgress,
): Promise<HeadlessWorkbook> {
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: {} },
    logLevel: LogLevel.WARN,
  });
  univer.registerPlugins([
    [WaitlessFormulaEngine],
    [UniverSheetsPlugin],
    [UniverSheetsFormulaPlugin, { initialFormulaComputing: CalculationMode.NO_CALCULATION }],
  ]);
  const api = FUniver.newAPI(univer);
  if (onProgress) {
    api.getFormula().calculationProcessing((stage) => {
      onProgress(stage.completedFormulasCount, stage.totalFormulasToCalculate);
    });
  }
  univer.createUnit(UniverInstanceType.UNIVER_SHEET, respellWorkbook(data, "excel"));
  const messages = registerFunctions(univer, metadata, implementations);
  const workbook = api.getActiveWorkbook()!;
  computeSoon(univer);
  computeAll(univer);
  await allComputed(univer);

  function sheetNamed(name: string) {
    const sheet = workbook.getSheetByName(name);
    if (!sheet) throw new Error(`no sheet is called "${name}"`);
    return sheet;
  }

  function placeOf(sheet: string, address: string): Place {
    const { startRow, startColumn } = deserializeRangeWithSheet(address).range;
    return {
      unitId: workbook.getId(),
      sheetId: sheetNamed(sheet).getSheetId(),
      row: startRow,
      column: startColumn,
    };
  }

  return {
    read: (sheet, address) => contentOf(univer, placeOf(sheet, address)),
    message: (sheet, address) => messageAt(univer, messages, placeOf(sheet, address)),
    spill: (sheet, address) => spillAt(univer, placeOf(sheet, address)),
    async write(sheet, address, content) {
      const range = sheetNamed(sheet).getRange(address);
      if (content === null) range.clearContent();
      else range.setValue(content);
      await allComputed(univer);
    },
    hasCircle: () => hasCircle(univer),
    save: () => workbook.save(),
    close: () => univer.dispose(),
  };
}
