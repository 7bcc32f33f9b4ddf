import type { ICommandInfo, IObjectMatrixPrimitiveType, IRange, Univer } from "@univerjs/core";
import { ICommandService, RANGE_TYPE } from "@univerjs/core";
import type { ISetArrayFormulaDataMutationParams } from "@univerjs/engine-formula";
import { SetArrayFormulaDataMutation } from "@univerjs/engine-formula";
import type {
  ISetRangeValuesMutationParams,
  ISetSelectionsOperationParams,
} from "@univerjs/sheets";
import { SetRangeValuesMutation, SetSelectionsOperation } from "@univerjs/sheets";
import { SetScrollOperation } from "@univerjs/preset-sheets-core";
import type { Corner, SheetPlace } from "./room";
import { makeRoom } from "./room";

/** How near to its edge a sheet is used before it grows: about what a large screen shows. */
export const NEAR = { rows: 80, columns: 20 };

/** How near for a cell that is written, not looked at: the edge itself. */
const ONTO = { rows: 0, columns: 0 };

/**
 * Lets every sheet grow before anybody reaches its edge: by selecting, typing, scrolling, filling,
 * pasting, or by a result that spills.
 */
export function growWithUse(univer: Univer): void {
  univer
    .__getInjector()
    .get(ICommandService)
    .beforeCommandExecuted((command) => {
      for (const { place, corner, margin } of usesOf(command)) {
        makeRoom(univer, place, {
          row: corner.row + margin.rows,
          column: corner.column + margin.columns,
        });
      }
    });
}

/** The farthest cells that a command is about to use. */
function usesOf({ id, params }: Readonly<ICommandInfo>): Use[] {
  switch (id) {
    case SetSelectionsOperation.id:
      return usesOfSelection(params as ISetSelectionsOperationParams);
    case SetScrollOperation.id:
      return usesOfScroll(params as ScrollParams);
    case SetRangeValuesMutation.id:
      return usesOfValues(params as ISetRangeValuesMutationParams);
    case SetArrayFormulaDataMutation.id:
      return usesOfSpills(params as ISetArrayFormulaDataMutationParams);
    default:
      return [];
  }
}

interface Use {
  readonly place: SheetPlace;
  readonly corner: Corner;
  readonly margin: { readonly rows: number; readonly columns: number };
}

function usesOfSelection({ unitId, subUnitId, selections }: ISetSelectionsOperationParams): Use[] {
  const place = { unitId, sheetId: subUnitId };
  return selections.map(({ range, primary }) => {
    // A whole row or column always touches the edge; only where it begins says where somebody is.
    const whole = range.rangeType !== undefined && range.rangeType !== RANGE_TYPE.NORMAL;
    const end = { row: range.endRow || 0, column: range.endColumn || 0 };
    const start = { row: primary?.startRow ?? 0, column: primary?.startColumn ?? 0 };
    return { place, corner: whole ? start : end, margin: NEAR };
  });
}

interface ScrollParams extends SheetPlace {
  readonly sheetViewStartRow?: number;
  readonly sheetViewStartColumn?: number;
}

function usesOfScroll(params: ScrollParams): Use[] {
  const { unitId, sheetId, sheetViewStartRow = 0, sheetViewStartColumn = 0 } = params;
  const corner = { row: sheetViewStartRow, column: sheetViewStartColumn };
  const moved = corner.row > 0 || corner.column > 0;
  return moved ? [{ place: { unitId, sheetId }, corner, margin: NEAR }] : [];
}

function usesOfValues({ unitId, subUnitId, cellValue }: ISetRangeValuesMutationParams): Use[] {
  const corner = farthest(cellValue ?? {});
  return corner ? [{ place: { unitId, sheetId: subUnitId }, corner, margin: ONTO }] : [];
}

function farthest(cells: IObjectMatrixPrimitiveType<unknown>): Corner | undefined {
  let row = -1;
  let column = -1;
  for (const [key, columns] of Object.entries(cells)) {
    row = Math.max(row, Number(key));
    for (const inRow of Object.keys(columns ?? {})) column = Math.max(column, Number(inRow));
  }
  return row < 0 ? undefined : { row, column: Math.max(column, 0) };
}

function usesOfSpills({ arrayFormulaRange }: ISetArrayFormulaDataMutationParams): Use[] {
  return Object.entries(arrayFormulaRange).flatMap(([unitId, sheets]) =>
    Object.entries(sheets ?? {}).flatMap(([sheetId, rows]) =>
      Object.values((rows ?? {}) as Record<number, Record<number, IRange>>)
        .flatMap((columns) => Object.values(columns))
        .map(({ endRow, endColumn }) => ({
          place: { unitId, sheetId },
          corner: { row: endRow, column: endColumn },
          margin: ONTO,
        })),
    ),
  );
}
