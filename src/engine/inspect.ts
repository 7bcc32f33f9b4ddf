import type { ICellData, IRange, Univer, Workbook, Worksheet } from "@univerjs/core";
import {
  CellValueType,
  IUniverInstanceService,
  ObjectMatrix,
  UniverInstanceType,
} from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { Messages, Place } from "./messages";
import { NO_ROOM } from "./messages";
import { contains } from "../formula/address";
import { callsOurs } from "../formula/spelling";

/** What a cell of an open workbook holds once everything is computed. */
export type CellContent = number | string | boolean | null;

export function contentOf(univer: Univer, place: Place): CellContent {
  const cell = storedCell(univer, place) ?? spilledCell(univer, place);
  const value = cell?.v ?? null;
  return cell?.t === CellValueType.BOOLEAN && value !== null ? Boolean(value) : value;
}

/** A cell's own value, or what its own formula computed; nothing where it only shows a spill. */
function storedCell(univer: Univer, place: Place): ICellData | undefined {
  const cell = sheetOf(univer, place)?.getCellRaw(place.row, place.column);
  return cell?.v === undefined || cell.v === null ? undefined : cell;
}

function spilledCell(univer: Univer, { unitId, sheetId, row, column }: Place) {
  const spilled = univer.__getInjector().get(FormulaDataModel).getArrayFormulaCellData();
  return spilled[unitId]?.[sheetId]?.[row]?.[column];
}

/** What our function says about the error that a cell shows, if it shows one of ours. */
export function messageAt(univer: Univer, messages: Messages, place: Place): string | undefined {
  const code = contentOf(univer, place);
  if (typeof code !== "string" || !code.startsWith("#")) return undefined;
  const origin = originOf(univer, place);
  if (!callsOurs(formulaAt(univer, origin))) return undefined;
  if (code === "#SPILL!") return NO_ROOM;
  return messages.find(origin, code, place.row - origin.row, place.column - origin.column);
}

/** The formula that fills a cell: its own, or the one that spills over it. */
export const formulaBehind = (univer: Univer, place: Place): string =>
  formulaAt(univer, originOf(univer, place));

function formulaAt(univer: Univer, { unitId, sheetId, row, column }: Place): string {
  const formulas = univer.__getInjector().get(FormulaDataModel);
  return formulas.getFormulaStringByCell(row, column, sheetId, unitId) ?? "";
}

/** The cell whose formula fills `place`: itself, or the one that spills over it. */
function originOf(univer: Univer, place: Place): Place {
  const ranges = univer.__getInjector().get(FormulaDataModel).getArrayFormulaRange();
  const ofSheet = new ObjectMatrix<IRange>(ranges[place.unitId]?.[place.sheetId] ?? {});
  let origin = place;
  ofSheet.forValue((row, column, range) => {
    if (contains(range, place.row, place.column)) origin = { ...place, row, column };
  });
  return origin;
}

function sheetOf(univer: Univer, { unitId, sheetId }: Place): Worksheet | undefined {
  const workbook = univer
    .__getInjector()
    .get(IUniverInstanceService)
    .getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
  return workbook?.getSheetBySheetId(sheetId) ?? undefined;
}
