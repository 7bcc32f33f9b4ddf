import type { Univer } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import {
  SetFormulaCalculationStartMutation,
  SetFormulaCalculationStopMutation,
} from "@univerjs/engine-formula";
import { TriggerCalculationController } from "@univerjs/sheets-formula";
import { calculationUnderWay } from "./settle";

/** Enough for all that one deed changes to come together: pasting, say, is many commands in a row. */
const PAUSE = 10;

/**
 * Begins to compute as soon as a change is made. The spreadsheet itself waits for a tenth of a second
 * first, which is most of what somebody who types would wait for.
 */
export function computeSoon(univer: Univer): void {
  const injector = univer.__getInjector();
  const commands = injector.get(ICommandService);
  const trigger = injector.get(TriggerCalculationController);
  let waiting = trigger["_setTimeoutKey"];
  // Listens after the spreadsheet's own listener, which has begun to wait by then where there was a change.
  commands.onCommandExecuted(() => {
    if (trigger["_setTimeoutKey"] === waiting) return;
    clearTimeout(trigger["_setTimeoutKey"]);
    waiting = trigger["_setTimeoutKey"] = setTimeout(begin, PAUSE);
  });

  /** What the spreadsheet does when its own wait is over. */
  function begin(): void {
    const changed = trigger["_generateDirty"](trigger["_waitingCommandQueue"]);
    const dirty = trigger["_mergeDirty"](trigger["_executingDirtyData"], changed);
    trigger["_executingDirtyData"] = dirty;
    trigger["_waitingCommandQueue"] = [];
    // The spreadsheet takes nothing to be going on until a first part is computed, and what it begins then beside the
    // other is lost where a third change stops it.
    if (!calculationUnderWay(univer)) {
      void commands.executeCommand(SetFormulaCalculationStartMutation.id, { ...dirty }, LOCAL);
    } else {
      trigger["_restartCalculation"] = true;
      void commands.executeCommand(SetFormulaCalculationStopMutation.id, {});
    }
  }
}

const LOCAL = { onlyLocal: true };
