import { IUniverInstanceService, LifecycleService, LifecycleStages } from "@univerjs/core";
import {
  OpenFindDialogOperation,
  OpenReplaceDialogOperation,
} from "@univerjs/preset-sheets-find-replace";
import type { PageWorkbook } from "./spreadsheet";

/**
 * Opens the dialog for finding or replacing. The spreadsheet gets its finder ready last, seconds after
 * the cells are there, and until then would drop the request without a word: it waits instead. And it
 * closes the dialog at once where nobody has touched the sheet yet, which is taken for touched here.
 */
export async function openFinder(
  { univer, api }: PageWorkbook,
  task: "find" | "replace",
): Promise<void> {
  const injector = univer.__getInjector();
  await injector.get(LifecycleService).onStage(LifecycleStages.Steady);
  const workbook = api.getActiveWorkbook();
  if (!workbook) return;
  injector.get(IUniverInstanceService).focusUnit(workbook.getId());
  const dialog = task === "find" ? OpenFindDialogOperation : OpenReplaceDialogOperation;
  await api.executeCommand(dialog.id);
}
