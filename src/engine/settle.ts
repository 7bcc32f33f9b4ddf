import type { Univer } from "@univerjs/core";
import type { IFormulaDatasetConfig } from "@univerjs/engine-formula";
import {
  CalculateFormulaService,
  FORMULA_REF_TO_ARRAY_CACHE,
  FormulaCurrentConfigService,
  ICalculateFormulaService,
  IFormulaCurrentConfigService,
  IFormulaDependencyGenerator,
  Lexer,
  UniverFormulaEnginePlugin,
} from "@univerjs/engine-formula";
import { RewritingLexer } from "./corrections/rewriting";
import { KeptDependencies } from "./keptDependencies";
import { beyondFormula, changesBetween, changesOnTop, forgetVacated, spillsIn } from "./spills";

/** More passes than this only a circle of spills would ask for. */
const MOST_PASSES = 50;

/** The formula engine, with a calculation that goes on until nothing moves any more. */
export class SettlingFormulaEngine extends UniverFormulaEnginePlugin {
  protected override _initializeWithOverride(): void {
    super._initializeWithOverride();
    this._injector.replace([ICalculateFormulaService, { useClass: SettlingCalculation }]);
    this._injector.replace([IFormulaCurrentConfigService, { useClass: CalculationState }]);
    this._injector.replace([IFormulaDependencyGenerator, { useClass: KeptDependencies }]);
    this._injector.replace([Lexer, { useClass: RewritingLexer }]);
  }
}

/** Where a workbook is opened all its formulas are to be computed; but in the first pass, and not again in each. */
class CalculationState extends FormulaCurrentConfigService {
  private isFirstPass = true;

  override load(config: IFormulaDatasetConfig): void {
    this.isFirstPass = true;
    super.load(config);
  }

  override loadDirtyRangesAndExcludedCell(
    ...changed: Parameters<FormulaCurrentConfigService["loadDirtyRangesAndExcludedCell"]>
  ): void {
    this.isFirstPass = false;
    super.loadDirtyRangesAndExcludedCell(...changed);
  }

  override isForceCalculate(): boolean {
    return this.isFirstPass && super.isForceCalculate();
  }
}

/**
 * The engine computes all formulas, and then once more those that read a cell some result spilled
 * over. Its order of computing does not know of spills, so where a spill reads a spill that reads a
 * spill, the last one may be left with what the first held before. Here the second pass is repeated
 * for the spills that changed, until none does.
 */
class SettlingCalculation extends CalculateFormulaService {
  /** Whether some cells read each other in a circle, as the last calculation found. */
  hasCircle = false;

  protected override async _executeStep(): Promise<true | undefined> {
    const current = this._currentConfigService;
    let state = await this._apply();
    this.hasCircle = this._runtimeService.isCycleDependency();
    if (!state) return undefined;
    let spills = spillsIn(state);
    let changes = changesOnTop(current, state, spills);
    for (const change of changes) forgetVacated(change, current.getArrayFormulaCellData());
    for (let pass = 0; changes.length > 0 && pass < MOST_PASSES; pass++) {
      FORMULA_REF_TO_ARRAY_CACHE.clear();
      current.loadDirtyRangesAndExcludedCell(changes.flatMap(beyondFormula), {});
      state = await this._apply(true);
      if (!state) return undefined;
      const before = spills;
      spills = spillsIn(state);
      changes = changesBetween(before, spills);
      for (const change of changes) forgetVacated(change, state.arrayFormulaCellData);
    }
    return true;
  }
}

/** Whether some cells of the open workbook read each other in a circle. */
export function hasCircle(univer: Univer): boolean {
  const calculation = univer.__getInjector().get(ICalculateFormulaService);
  return calculation instanceof SettlingCalculation && calculation.hasCircle;
}
