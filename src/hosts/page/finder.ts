import { IUniverInstanceService, LifecycleService, LifecycleStages } from "@univerjs/core";
import {
  FindReplaceController,
  IFindReplaceService,
  OpenFindDialogOperation,
  OpenReplaceDialogOperation,
} from "@univerjs/preset-sheets-find-replace";
import type { PageWorkbook } from "./spreadsheet";

/** So long the spreadsheet may take to draw its dialog, or to draw it away again. */
const DRAWN = 500;

const MOST_TRIES = 4;

/**
 * Opens the dialog for finding or replacing. The spreadsheet gets its finder ready last, seconds after
 * the cells are there, and until then would drop the request without a word: it waits instead. The
 * spreadsheet also closes the dialog at once where nobody has touched the sheet yet, which is taken for
 * touched here; and it forgets the dialog where some other part of it is drawn anew in that moment,
 * while it believes it open: then it is opened again.
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
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    await api.executeCommand(dialog.id);
    await new Promise((resolve) => setTimeout(resolve, DRAWN));
    if (isDrawn() || !injector.get(IFindReplaceService).revealed) return;
    injector.get(FindReplaceController).closePanel();
  }
}

const isDrawn = () => document.querySelector("[data-u-comp=find-replace-dialog]") !== null;
