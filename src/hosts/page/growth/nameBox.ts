import type { FUniver } from "@univerjs/core/facade";
import type { Univer } from "@univerjs/core";
import { parseArea } from "../../../formula/address";
import { makeRoom } from "./room";

/**
 * Lets the box that shows the selected cell's address go to any cell a file can have: the sheet
 * grows first, since the box itself fails on a cell beyond the edge.
 */
export function growForNameBox(univer: Univer, api: FUniver): void {
  document.addEventListener(
    "keydown",
    ({ key, target }) => {
      if (key !== "Enter" || !(target instanceof HTMLInputElement)) return;
      if (!target.closest("[data-u-comp=defined-name]")) return;
      const area = parseArea(target.value.trim());
      const workbook = api.getActiveWorkbook();
      if (!area || !workbook) return;
      const place = {
        unitId: workbook.getId(),
        sheetId: workbook.getActiveSheet().getSheetId(),
      };
      makeRoom(univer, place, { row: area.endRow, column: area.endColumn });
    },
    true,
  );
}
