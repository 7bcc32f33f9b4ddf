import type { IRange, IUnitRange } from "@univerjs/core";
import { ObjectMatrix } from "@univerjs/core";
import type { IAllRuntimeData, IFormulaCurrentConfigService } from "@univerjs/engine-formula";
import {
  CalculateFormulaService,
  FORMULA_REF_TO_ARRAY_CACHE,
  ICalculateFormulaService,
  UniverFormulaEnginePlugin,
} from "@univerjs/engine-formula";

/** More passes than this only a circle of spills would ask for. */
const mostPasses = 50;

/** The formula engine, with a calculation that goes on until nothing moves any more. */
export class SettlingFormulaEngine extends UniverFormulaEnginePlugin {
  protected override _initializeWithOverride(): void {
    super._initializeWithOverride();
    this._injector.replace([ICalculateFormulaService, { useClass: SettlingCalculation }]);
  }
}

/**
 * The engine computes all formulas, and then once more those that read a cell some result spilled
 * over. Its order of computing does not know of spills, so where a spill reads a spill that reads a
 * spill, the last one may be left with what the first held before. Here the second pass is repeated
 * for the spills that changed, until none does.
 */
class SettlingCalculation extends CalculateFormulaService {
  protected override async _executeStep(): Promise<true | undefined> {
    const current = this._currentConfigService;
    let state = await this._apply();
    let spills = new Map<string, Spill>();
    for (let pass = 0; state && pass < mostPasses; pass++) {
      const before = spills;
      spills = spillsIn(state);
      const places = [...spills]
        .filter(([at, spill]) => before.get(at)?.values !== spill.values)
        .map(([, { place }]) => place);
      if (places.length === 0) return true;
      forgetFormerSpills(current, places);
      FORMULA_REF_TO_ARRAY_CACHE.clear();
      current.loadDirtyRangesAndExcludedCell(places, {});
      state = await this._apply(true);
    }
    return state && true;
  }
}

/** A spill that shrank must not be read where it no longer is. */
function forgetFormerSpills(current: IFormulaCurrentConfigService, places: readonly IUnitRange[]) {
  for (const { unitId, sheetId, range } of places) {
    const former =
      current.getArrayFormulaRange()[unitId]?.[sheetId]?.[range.startRow]?.[range.startColumn];
    const cells = current.getArrayFormulaCellData()[unitId]?.[sheetId];
    if (!former || !cells) continue;
    for (let row = former.startRow; row <= former.endRow; row++) {
      for (let column = former.startColumn; column <= former.endColumn; column++) {
        if (!(row <= range.endRow && column <= range.endColumn)) cells.realDeleteValue(row, column);
      }
    }
  }
}

/** The cells that one formula's result covers, and what they hold, as text that can be compared. */
interface Spill {
  readonly place: IUnitRange;
  readonly values: string;
}

/** What the calculation has spilled so far, by the cell of the formula. */
function spillsIn({ arrayFormulaRange, arrayFormulaCellData }: IAllRuntimeData) {
  const spills = new Map<string, Spill>();
  for (const [unitId, sheets] of Object.entries(arrayFormulaRange)) {
    for (const [sheetId, ranges] of Object.entries(sheets ?? {})) {
      const cells = arrayFormulaCellData[unitId]?.[sheetId];
      new ObjectMatrix<IRange>(ranges).forValue((row, column, range) => {
        const values: unknown[] = [];
        for (let r = range.startRow; r <= range.endRow; r++) {
          for (let c = range.startColumn; c <= range.endColumn; c++) {
            values.push(cells?.getValue(r, c)?.v);
          }
        }
        spills.set([unitId, sheetId, row, column].join(" "), {
          place: { unitId, sheetId, range },
          values: JSON.stringify(values),
        });
      });
    }
  }
  return spills;
}
