import { LAST_COLUMN, LAST_ROW, type Area } from "../../formula/address";

/** The cells that one of two areas has and the other has not, where both start at the same cell. */
export function extentChanges(before: Area, after: Area): Area[] {
  const { startRow, startColumn } = before;
  const changes: Area[] = [];
  if (before.endRow !== after.endRow) {
    const [shorter, longer] = before.endRow < after.endRow ? [before, after] : [after, before];
    changes.push({ ...longer, startRow: shorter.endRow + 1 });
  }
  if (before.endColumn !== after.endColumn) {
    const [narrower, wider] =
      before.endColumn < after.endColumn ? [before, after] : [after, before];
    changes.push({ ...wider, startColumn: narrower.endColumn + 1 });
  }
  return changes.map((area) => ({
    startRow: Math.max(startRow, area.startRow),
    startColumn: Math.max(startColumn, area.startColumn),
    endRow: Math.min(LAST_ROW, area.endRow),
    endColumn: Math.min(LAST_COLUMN, area.endColumn),
  }));
}
