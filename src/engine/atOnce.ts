import type { Univer } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import {
  ActiveDirtyManagerService,
  IActiveDirtyManagerService,
  SetFormulaCalculationStartMutation,
  SetTriggerFormulaCalculationStartMutation,
  type ISetFormulaCalculationStartMutation,
} from "@univerjs/engine-formula";
import { SettlingFormulaEngine } from "./settle";

/**
 * The formula engine for a workbook that nobody types into: where one is opened the engine waits a tenth of a second for
 * more to come before it computes. This one leaves the start to `computeAll`.
 */
export class WaitlessFormulaEngine extends SettlingFormulaEngine {
  protected override _initializeWithOverride(): void {
    super._initializeWithOverride();
    this._injector.replace([IActiveDirtyManagerService, { useClass: DeafToOpening }]);
  }
}

/** What makes cells ask to be computed: every change of them, but not that a workbook was opened. */
class DeafToOpening extends ActiveDirtyManagerService {
  override register(
    ...[command, conversion]: Parameters<ActiveDirtyManagerService["register"]>
  ): void {
    if (command === SetTriggerFormulaCalculationStartMutation.id) return;
    super.register(command, conversion);
  }
}

/** Starts to compute all formulas. */
export function computeAll(univer: Univer): void {
  const everything: ISetFormulaCalculationStartMutation = {
    forceCalculation: true,
    dirtyRanges: [],
    dirtyNameMap: {},
    dirtyDefinedNameMap: {},
    dirtySuperTableMap: {},
    dirtyUnitFeatureMap: {},
    dirtyUnitOtherFormulaMap: {},
    clearDependencyTreeCache: {},
    options: null,
  };
  univer
    .__getInjector()
    .get(ICommandService)
    .syncExecuteCommand(SetFormulaCalculationStartMutation.id, everything, { onlyLocal: true });
}
