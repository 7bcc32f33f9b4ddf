import type { Univer } from "@univerjs/core";
import type { IFormulaDatasetConfig } from "@univerjs/engine-formula";
import {
  CalculateFormulaService,
  CELL_INVERTED_INDEX_CACHE,
  FORMULA_REF_TO_ARRAY_CACHE,
  FormulaCurrentConfigService,
  FormulaExecuteStageType,
  ICalculateFormulaService,
  IFormulaCurrentConfigService,
  IFormulaDependencyGenerator,
  Lexer,
  UniverFormulaEnginePlugin,
} from "@univerjs/engine-formula";
import { RewritingLexer } from "./corrections/rewriting";
import { KeptDependencies } from "./keptDependencies";
import { nextTask } from "./nextTask";
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

  /** The calculation that was asked for last, until it has ended. */
  underWay: Promise<void> | undefined;

  /**
   * One calculation after the other. The engine hands the next one's changes to the one that is still going on, and
   * has nothing left for the next to compute.
   */
  override async execute(changed: IFormulaDatasetConfig): Promise<void> {
    const before = this.underWay;
    const own = before ? this.executeAfter(before, changed) : this.executeAlone(changed);
    this.underWay = own;
    try {
      await own;
    } finally {
      if (this.underWay === own) this.underWay = undefined;
    }
  }

  private async executeAfter(before: Promise<void>, changed: IFormulaDatasetConfig): Promise<void> {
    await before.catch(() => undefined);
    // What came of it is put into the cells on its own time.
    await nextTask();
    if (this._runtimeService.isStopExecution()) this.tellStopped();
    else await this.executeAlone(changed);
  }

  private async executeAlone(changed: IFormulaDatasetConfig): Promise<void> {
    const runtime = this._runtimeService;
    this.tellStage(FormulaExecuteStageType.START);
    this._currentConfigService.load(changed);
    runtime.reset();
    this._isCalculateTreeModel = changed.isCalculateTreeModel ?? false;
    for (let round = 0; round < (changed.maxIteration || 1); round++) {
      runtime.setFormulaCycleIndex(round);
      await this._executeStep();
      FORMULA_REF_TO_ARRAY_CACHE.clear();
      if (!runtime.isCycleDependency()) break;
    }
    // That it was stopped is told where it stopped; told twice, it would be taken for the end of the next one.
    if (!runtime.isStopExecution()) {
      this.tellStage(FormulaExecuteStageType.CALCULATION_COMPLETED);
      this._executionCompleteListener$.next(runtime.getAllRuntimeData());
    }
    CELL_INVERTED_INDEX_CACHE.clear();
    runtime.reset();
  }

  private tellStopped(): void {
    const runtime = this._runtimeService;
    runtime.markedAsStopFunctionsExecuted();
    this._executionCompleteListener$.next(runtime.getAllRuntimeData());
    runtime.reset();
  }

  private tellStage(stage: FormulaExecuteStageType): void {
    this._runtimeService.setFormulaExecuteStage(stage);
    this._executionInProgressListener$.next(this._runtimeService.getRuntimeState());
  }

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

/** The calculation that is going on in the open workbook, until all that was asked for has ended. */
export function calculationUnderWay(univer: Univer): Promise<void> | undefined {
  const calculation = univer.__getInjector().get(ICalculateFormulaService);
  return calculation instanceof SettlingCalculation ? calculation.underWay : undefined;
}
