import type { IRange, IUnitRange, Nullable } from "@univerjs/core";
import { ObjectMatrix, Range } from "@univerjs/core";
import type { IAllRuntimeData, IFormulaCurrentConfigService } from "@univerjs/engine-formula";

/** The cells that a formula's result covers, its own the first, and what they hold, as text that can be compared. */
interface Spill extends IUnitRange {
  readonly values: string;
}

/** A spill that is not what it was, and the cells it covered then. */
export interface Change extends IUnitRange {
  readonly former: IRange | undefined;
}

type Spills = ReadonlyMap<string, Spill>;

/** What a calculation has spilled so far, by the cell of the formula. */
export function spillsIn({ arrayFormulaRange, arrayFormulaCellData }: IAllRuntimeData): Spills {
  const spills = new Map<string, Spill>();
  for (const { unitId, sheetId, content } of sheetsOf(arrayFormulaRange)) {
    const cells = arrayFormulaCellData[unitId]?.[sheetId];
    new ObjectMatrix<IRange>(content).forValue((row, column, range) => {
      const values: unknown[] = [];
      Range.foreach(range, (r, c) => values.push(cells?.getValue(r, c)?.v));
      const key = [unitId, sheetId, row, column].join(" ");
      spills.set(key, { unitId, sheetId, range, values: JSON.stringify(values) });
    });
  }
  return spills;
}

/** How spills differ from what they were a pass ago. */
export const changesBetween = (before: Spills, after: Spills): Change[] =>
  [...after].flatMap(([key, { values, ...place }]) =>
    before.get(key)?.values === values ? [] : [{ ...place, former: before.get(key)?.range }],
  );

/** How the spills of a calculation's first pass differ from those that the calculations before it left. */
export function changesOnTop(
  current: IFormulaCurrentConfigService,
  { clearArrayFormulaCellData }: IAllRuntimeData,
  spills: Spills,
): Change[] {
  const left = current.getArrayFormulaRange();
  const formerAt = (unitId: string, sheetId: string, row: number, column: number) =>
    left[unitId]?.[sheetId]?.[row]?.[column];
  const changed = [...spills.values()].map(({ unitId, sheetId, range }) => ({
    unitId,
    sheetId,
    range,
    former: formerAt(unitId, sheetId, range.startRow, range.startColumn),
  }));
  // Where a result found no room or is a single value, the engine says that there is nothing spilled now.
  const ended: Change[] = [];
  for (const { unitId, sheetId, content } of sheetsOf(clearArrayFormulaCellData)) {
    content.forValue((row, column) => {
      const former = formerAt(unitId, sheetId, row, column);
      if (former) ended.push({ unitId, sheetId, range: cellAt(row, column), former });
    });
  }
  return [...changed, ...ended];
}

const cellAt = (row: number, column: number): IRange => ({
  startRow: row,
  startColumn: column,
  endRow: row,
  endColumn: column,
});

/** The sheets of what the engine keeps by workbook and by sheet. */
function* sheetsOf<T>(units: Readonly<Record<string, Nullable<Readonly<Record<string, T>>>>>) {
  for (const [unitId, sheets] of Object.entries(units)) {
    for (const [sheetId, content] of Object.entries(sheets ?? {})) {
      yield { unitId, sheetId, content };
    }
  }
}

/** Empties the cells that a spill no longer covers. */
export function forgetVacated(
  { unitId, sheetId, range, former }: Change,
  spilled: IAllRuntimeData["arrayFormulaCellData"],
): void {
  const cells = spilled[unitId]?.[sheetId];
  if (!former || !cells) return;
  Range.foreach(former, (row, column) => {
    if (row > range.endRow || column > range.endColumn) cells.realDeleteValue(row, column);
  });
}

/**
 * The cells beside and below the formula's own that its spill covers or covered, in rectangles. Whoever reads that cell
 * alone came after it in the order of computing; and were it among what has changed, the formula itself would be
 * computed once more.
 */
export function beyondFormula({ unitId, sheetId, range, former = range }: Change): IUnitRange[] {
  const endRow = Math.max(range.endRow, former.endRow);
  const endColumn = Math.max(range.endColumn, former.endColumn);
  const { startRow, startColumn } = range;
  const beside = { startRow, startColumn: startColumn + 1, endRow: startRow, endColumn };
  const below = { startRow: startRow + 1, startColumn, endRow, endColumn };
  return [
    ...(endColumn > startColumn ? [{ unitId, sheetId, range: beside }] : []),
    ...(endRow > startRow ? [{ unitId, sheetId, range: below }] : []),
  ];
}
