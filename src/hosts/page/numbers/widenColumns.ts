import type { Univer } from "@univerjs/core";
import { CellValueType, ICommandService } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { FontCache, getFontStyleString } from "@univerjs/preset-sheets-core";
import type { ISetRangeValuesCommandParams } from "@univerjs/sheets";
import { SetRangeValuesCommand, SetWorksheetColWidthMutation } from "@univerjs/sheets";

/** Space beside the text. */
const PADDING = 8;

/** Wider than this a column does not grow on its own. */
const WIDEST = 200;

/**
 * Widens a column whose width nobody chose, when a date or a number is typed into it that would not
 * be seen whole.
 */
export function widenForNumbers(univer: Univer, api: FUniver): void {
  const commands = univer.__getInjector().get(ICommandService);
  commands.onCommandExecuted(({ id, params }) => {
    if (id !== SetRangeValuesCommand.id) return;
    const { range } = params as ISetRangeValuesCommandParams;
    // What is typed changes one cell; filling and pasting many leaves the columns as they are.
    if (!range || range.startRow !== range.endRow || range.startColumn !== range.endColumn) return;
    widen(range.startRow, range.startColumn);
  });

  function widen(row: number, column: number): void {
    const sheet = api.getActiveWorkbook()?.getActiveSheet();
    const core = sheet?.getSheet();
    if (!sheet || core?.getCellRaw(row, column)?.t !== CellValueType.NUMBER) return;
    if (core.getColumnManager().getColumn(column)?.w !== undefined) return;
    const text = sheet.getRange(row, column).getDisplayValue();
    const font = getFontStyleString(core.getComposedCellStyle(row, column)).fontCache;
    const needed = FontCache.getMeasureText(text, font).width + PADDING;
    if (needed <= sheet.getColumnWidth(column) || needed > WIDEST) return;
    commands.syncExecuteCommand(SetWorksheetColWidthMutation.id, {
      unitId: core.getUnitId(),
      subUnitId: core.getSheetId(),
      ranges: [{ startRow: 0, endRow: 0, startColumn: column, endColumn: column }],
      colWidth: Math.ceil(needed),
    });
  }
}
