import type { Univer } from "@univerjs/core";
import { TriggerCalculationController } from "@univerjs/sheets-formula";
import { nextTask } from "./nextTask";
import { calculationUnderWay } from "./settle";

/**
 * Waits until all that was asked for is computed and stands in its cells; where changes are taken up by `computeSoon`,
 * in a moment.
 *
 * The spreadsheet's own waiting ends where no calculation has begun after half a second, as on a busy machine, and the
 * cells are then as they were before.
 */
export async function allComputed(univer: Univer): Promise<void> {
  const trigger = univer.__getInjector().get(TriggerCalculationController);
  do {
    await calculationUnderWay(univer);
    // A change is put into the queue, and a result into its cells, on its own time.
    await nextTask();
  } while (calculationUnderWay(univer) || trigger["_waitingCommandQueue"].length > 0);
}
