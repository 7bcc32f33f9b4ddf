import { LifecycleService, LifecycleStages } from "@univerjs/core";
import {
  OpenFindDialogOperation,
  OpenReplaceDialogOperation,
} from "@univerjs/preset-sheets-find-replace";
import type { PageWorkbook } from "./spreadsheet";

/**
 * Opens the dialog for finding or replacing. The spreadsheet gets its finder ready last, seconds after
 * the cells are there, and until then would drop the request without a word: it waits instead.
 */
export async function openFinder(
  { univer, api }: PageWorkbook,
  task: "find" | "replace",
): Promise<void> {
  await univer.__getInjector().get(LifecycleService).onStage(LifecycleStages.Steady);
  const dialog = task === "find" ? OpenFindDialogOperation : OpenReplaceDialogOperation;
  await api.executeCommand(dialog.id);
}
