import type { ICommandInfo, IRange, IWorkbookData } from "@univerjs/core";
import { ICommandService, LocaleType, LogLevel, Univer } from "@univerjs/core";
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
import { UniverSheetsFilterPreset } from "@univerjs/preset-sheets-filter";
import { UniverSheetsFindReplacePreset } from "@univerjs/preset-sheets-find-replace";
import { UniverSheetsSortPreset } from "@univerjs/preset-sheets-sort";
import { CalculationMode } from "@univerjs/sheets-formula";
import { allComputed } from "../../engine/allComputed";
import { computeSoon } from "../../engine/computeSoon";
import type { CellContent } from "../../engine/inspect";
import { contentOf, formulaBehind, messageAt } from "../../engine/inspect";
import { keptFormulaOf } from "../../engine/keptFormulas";
import type { Messages, Place } from "../../engine/messages";
import type { FunctionsMetadata, Implementations } from "../../engine/metadata";
import { registerFunctions } from "../../engine/register";
import { respellWorkbook } from "../../engine/respell";
import { SettlingFormulaEngine } from "../../engine/settle";
import { spillAt } from "../../engine/spill";
import { inRowsOf } from "../../pane/formula/sheetRows";
import { isEdit } from "./edits";
import { editDatesAsDates } from "./dates/editDates";
import { markKeptFormulas } from "./files/markKept";
import { growWithUse } from "./growth/growWithUse";
import { growWithScroll } from "./growth/growWithScroll";
import { growForNameBox } from "./growth/nameBox";
import { endFormulasPastNameList, typeOnBehindChosenName } from "./nameList";
import "./drawOnDemand";
import "./numbers/drawNumbers";
import { widenForNumbers } from "./numbers/widenColumns";
import { replaceWorkbook } from "./replaceWorkbook";
import "./steadyToolbar";
import { theme } from "./theme";
import { words } from "./words";

/** After computing so many formulas, the page looks whether somebody has typed meanwhile. */
const PORTION = 25;

/** The workbook on the page. */
export interface PageWorkbook {
  /** The spreadsheet itself, for what has more to ask of it. */
  readonly api: FUniver;
  /** What it is made of, for what its own interface does not reach. */
  readonly univer: Univer;
  /** What a cell holds: `readCell("Start", "C11")`. */
  readCell(sheet: string, address: string): CellContent;
  /** Calls back whenever the selected cell, or what it says, may have changed. */
  onChange(listener: () => void): void;
  /** The message of the error in the selected cell, if it shows one of ours. */
  selectedMessage(): string | undefined;
  /** What the open workbook goes by in the spreadsheet. */
  id(): string;
  /**
   * Puts another workbook in the place of the open one, once it is there and computed; `prepare` may
   * change it before. Where that fails, the open one stays.
   */
  open(data: IWorkbookData, prepare?: () => void): Promise<void>;
  /** Waits until everything is computed as the cells now are. */
  computed(): Promise<void>;
  /** The workbook as it stands, without what its formulas spilled. */
  save(): IWorkbookData;
  /** The cells that the formula in a cell spills over, its own among them. */
  spill(sheet: string, address: string): IRange | undefined;
  /** Calls back when the person changes something that a file would keep. */
  onEdit(listener: (edit: Readonly<ICommandInfo>) => void): void;
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
    UniverSheetsFindReplacePreset(),
    UniverSheetsSortPreset(),
    UniverSheetsFilterPreset(),
  ];
  for (const plugin of presets.flatMap(({ plugins }) => plugins)) {
    const [constructor, options] = Array.isArray(plugin) ? plugin : [plugin];
    const drawsPictures =
      constructor === UniverDrawingUIPlugin || constructor === UniverSheetsDrawingUIPlugin;
    if (constructor === UniverFormulaEnginePlugin) {
      univer.registerPlugin(SettlingFormulaEngine, { ...Object(options), intervalCount: PORTION });
    } else {
      univer.registerPlugin(constructor, drawsPictures ? ONLY_LOOSE_PICTURES : options);
    }
  }
  const api = FUniver.newAPI(univer);
  api.createWorkbook(respellWorkbook(data, "excel"));
  const messages: Messages = registerFunctions(univer, metadata, implementations);

  computeSoon(univer);
  endFormulasPastNameList(univer);
  typeOnBehindChosenName(univer);
  growWithUse(univer);
  growWithScroll(univer, api);
  growForNameBox(univer, api);
  editDatesAsDates(univer);
  widenForNumbers(univer, api);
  markKeptFormulas(univer);

  // The panel beside a picture offers this as well, and no menu's setting reaches that.
  api.addEvent(api.Event.BeforeCommandExecute, (event) => {
    if (event.id === SetDrawingGroupOperation.id) event.cancel = true;
  });

  const current = () => api.getActiveWorkbook()!;
  let opening = false;

  function placeOf(name: string, address: string): Place {
    const workbook = current();
    const sheet = workbook.getSheetByName(name);
    if (!sheet) throw new Error(`no sheet is called "${name}"`);
    const { startRow, startColumn } = deserializeRangeWithSheet(address).range;
    const place = { unitId: workbook.getId(), sheetId: sheet.getSheetId() };
    return { ...place, row: startRow, column: startColumn };
  }

  /** What our function says about a cell's error, with the sheet's own cells. */
  function messageInSheetRows(place: Place): string | undefined {
    const message = messageAt(univer, messages, place);
    return message && inRowsOf(message, formulaBehind(univer, place), metadata.functions);
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
    univer,
    readCell: (name, address) => contentOf(univer, placeOf(name, address)),
    spill: (name, address) => spillAt(univer, placeOf(name, address)),
    computed: () => allComputed(univer),
    save: () => current().save(),
    id: () => current().getId(),
    async open(other, prepare) {
      opening = true;
      try {
        await replaceWorkbook(univer, api, other, prepare);
      } finally {
        opening = false;
      }
    },
    onEdit(listener) {
      univer
        .__getInjector()
        .get(ICommandService)
        .onCommandExecuted((command, options) => {
          const { unitId } = (command.params ?? {}) as { readonly unitId?: string };
          const isOurs = !opening && unitId === current().getId();
          if (isOurs && isEdit(command, options)) listener(command);
        });
    },
    onChange(listener) {
      api.addEvent(api.Event.SelectionChanged, listener);
      api.addEvent(api.Event.ActiveSheetChanged, listener);
      api.getFormula().calculationEnd(listener);
    },
    selectedMessage() {
      const place = selectedPlace();
      if (!place) return undefined;
      const raw = current().getActiveSheet().getSheet().getCellRaw(place.row, place.column);
      const kept = keptFormulaOf(raw);
      if (raw?.v === "#CYCLE!") {
        return "This formula reads its own result, by way of a cell or a name that it uses.";
      }
      return kept
        ? `${kept.formula} is not computed here: this is the value that the file has.`
        : messageInSheetRows(place);
    },
  };
}

/** Pictures lie over the cells, each by itself: those inside a cell or a group no file here keeps. */
const ONLY_LOOSE_PICTURES = {
  menu: {
    "sheet.command.insert-cell-image": { hidden: true },
    [SaveCellImagesCommand.id]: { hidden: true },
    "contextMenu.drawing-group": { hidden: true },
  },
};
