import type { Univer, Workbook } from "@univerjs/core";
import { ICommandService, IUniverInstanceService, UniverInstanceType } from "@univerjs/core";
import { SetWorksheetColumnCountMutation, SetWorksheetRowCountMutation } from "@univerjs/sheets";
import { LAST_COLUMN, LAST_ROW } from "../../../formula/address";

/** One sheet of an open workbook. */
export interface SheetPlace {
  readonly unitId: string;
  readonly sheetId: string;
}

/** A cell that a sheet must have, rows and columns counted from 0. */
export interface Corner {
  readonly row: number;
  readonly column: number;
}

/** What a sheet that grows has beyond the cell it grew for: more than a screen of both. */
const SPARE = { rows: 200, columns: 30 };

/**
 * Lets a sheet reach at least `corner`, up to the size that files allow. Growing is no change of
 * anybody's work: it cannot be undone and needs no saving.
 */
export function makeRoom(univer: Univer, { unitId, sheetId }: SheetPlace, corner: Corner): void {
  const injector = univer.__getInjector();
  const sheet = injector
    .get(IUniverInstanceService)
    .getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET)
    ?.getSheetBySheetId(sheetId);
  if (!sheet) return;
  const commands = injector.get(ICommandService);
  const place = { unitId, subUnitId: sheetId };
  if (corner.row >= sheet.getRowCount() && sheet.getRowCount() <= LAST_ROW) {
    const rowCount = Math.min(corner.row + SPARE.rows, LAST_ROW + 1);
    commands.syncExecuteCommand(SetWorksheetRowCountMutation.id, { ...place, rowCount });
  }
  if (corner.column >= sheet.getColumnCount() && sheet.getColumnCount() <= LAST_COLUMN) {
    const columnCount = Math.min(corner.column + SPARE.columns, LAST_COLUMN + 1);
    commands.syncExecuteCommand(SetWorksheetColumnCountMutation.id, { ...place, columnCount });
  }
}
