import type { Univer } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { NEAR } from "./growWithUse";
import { makeRoom } from "./room";

/**
 * Lets a sheet grow while a pointer that is dragged beyond the window's edge scrolls it, to fill or to
 * select: that scrolling is no command, and a sheet's edge would stop it.
 */
export function growWithScroll(univer: Univer, api: FUniver): void {
  api.addEvent(api.Event.Scroll, ({ workbook, worksheet }) => {
    const { sheetViewStartRow = 0, sheetViewStartColumn = 0 } = worksheet.getScrollState();
    if (sheetViewStartRow === 0 && sheetViewStartColumn === 0) return;
    const place = { unitId: workbook.getId(), sheetId: worksheet.getSheetId() };
    const corner = {
      row: sheetViewStartRow + NEAR.rows,
      column: sheetViewStartColumn + NEAR.columns,
    };
    // After the scrolling itself, which is under way.
    setTimeout(() => makeRoom(univer, place, corner));
  });
}
