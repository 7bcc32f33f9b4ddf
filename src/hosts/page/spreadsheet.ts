import type { IRange, IWorkbookData } from "@univerjs/core";
import {
  CommandType,
  LocaleType,
  LogLevel,
  Univer,
  IUniverInstanceService,
  UniverInstanceType,
} from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { deserializeRangeWithSheet, UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import {
  SaveCellImagesCommand,
  SetDrawingGroupOperation,
  UniverDrawingUIPlugin,
  UniverSheetsDrawingPreset,
  UniverSheetsDrawingUIPlugin,
} from "@univerjs/preset-sheets-drawing";
import { CalculationMode } from "@univerjs/sheets-formula";
import type { CellContent } from "../../engine/inspect";
import { contentOf, messageAt } from "../../engine/inspect";
import type { Messages, Place } from "../../engine/messages";
import type { FunctionsMetadata, Implementations } from "../../engine/metadata";
import { registerFunctions } from "../../engine/register";
import { respellWorkbook } from "../../engine/respell";
import { SettlingFormulaEngine } from "../../engine/settle";
import { spillAt } from "../../engine/spill";
import { theme } from "./theme";
import { words } from "./words";

/** The workbook on the page. */
export interface PageWorkbook {
  /** The spreadsheet itself, for what has more to ask of it. */
  readonly api: FUniver;
  /** What a cell holds: `readCell("Start", "C11")`. */
  readCell(sheet: string, address: string): CellContent;
  /** Calls back whenever the selected cell, or what it says, may have changed. */
  onChange(listener: () => void): void;
  /** The message of the error in the selected cell, if it shows one of ours. */
  selectedMessage(): string | undefined;
  /** Puts another workbook in the place of the open one, and computes it. */
  open(data: IWorkbookData): Promise<void>;
  /** The workbook as it stands, without what its formulas spilled. */
  save(): IWorkbookData;
  /** The cells that the formula in a cell spills over, its own among them. */
  spill(sheet: string, address: string): IRange | undefined;
  /** Calls back when the person changes something that a file would keep. */
  onEdit(listener: () => void): void;
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
    locales: { [LocaleType.EN_US]: words },
    logLevel: LogLevel.WARN,
  });
  const presets = [
    UniverSheetsCorePreset({
      container,
      ribbonType: "simple",
      formula: { initialFormulaComputing: CalculationMode.FORCED },
    }),
    UniverSheetsDrawingPreset(),
  ];
  for (const plugin of presets.flatMap(({ plugins }) => plugins)) {
    const [constructor, options] = Array.isArray(plugin) ? plugin : [plugin];
    const drawsPictures =
      constructor === UniverDrawingUIPlugin || constructor === UniverSheetsDrawingUIPlugin;
    univer.registerPlugin(
      constructor === UniverFormulaEnginePlugin ? SettlingFormulaEngine : constructor,
      drawsPictures ? onlyLoosePictures : options,
    );
  }
  const api = FUniver.newAPI(univer);
  api.createWorkbook(respellWorkbook(data, "excel"));
  const messages: Messages = registerFunctions(univer, metadata, implementations);

  // The panel beside a picture offers this as well, and no menu's setting reaches that.
  api.addEvent(api.Event.BeforeCommandExecute, (event) => {
    if (event.id === SetDrawingGroupOperation.id) event.cancel = true;
  });

  const current = () => api.getActiveWorkbook()!;
  let opened = 0;

  function placeOf(name: string, address: string): Place {
    const workbook = current();
    const sheet = workbook.getSheetByName(name);
    if (!sheet) throw new Error(`no sheet is called "${name}"`);
    const { startRow, startColumn } = deserializeRangeWithSheet(address).range;
    const place = { unitId: workbook.getId(), sheetId: sheet.getSheetId() };
    return { ...place, row: startRow, column: startColumn };
  }

  function selectedPlace(): Place | undefined {
    const workbook = current();
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
    api,
    readCell: (name, address) => contentOf(univer, placeOf(name, address)),
    spill: (name, address) => spillAt(univer, placeOf(name, address)),
    save: () => current().save(),
    async open(other) {
      const before = current().getId();
      opened++;
      const respelled = respellWorkbook({ ...other, id: `opened-${opened}` }, "excel");
      univer.createUnit(UniverInstanceType.UNIVER_SHEET, respelled);
      univer.__getInjector().get(IUniverInstanceService).disposeUnit(before);
      const formula = api.getFormula();
      formula.executeCalculation();
      await formula.onCalculationResultApplied(patience);
    },
    onEdit(listener) {
      api.addEvent(api.Event.CommandExecuted, ({ id, type, options }) => {
        if (type === CommandType.MUTATION && changesFile(id) && !options?.fromFormula) listener();
      });
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

/** Pictures lie over the cells, each by itself: those inside a cell or a group no file here keeps. */
const onlyLoosePictures = {
  menu: {
    "sheet.command.insert-cell-image": { hidden: true },
    [SaveCellImagesCommand.id]: { hidden: true },
    "contextMenu.drawing-group": { hidden: true },
  },
};

/** How long a workbook may take to compute before it is shown as it was saved. */
const patience = 60_000;

/** Whether a command changes what a file keeps, rather than what is computed or shown of it. */
function changesFile(id: string): boolean {
  if (id.startsWith("formula.mutation.")) return /defined-name/.test(id);
  return id.startsWith("sheet.mutation.") && !/auto-height|worksheet-activ|calculat/.test(id);
}
