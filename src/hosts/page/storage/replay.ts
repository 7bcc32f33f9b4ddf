import type { Univer } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import type { Change } from "./database";

/** Makes again, in a workbook that was just taken from the shelf, what was changed since it was put there. */
export function replay(univer: Univer, changes: readonly Change[]): void {
  const commands = univer.__getInjector().get(ICommandService);
  for (const { id, params } of changes) {
    commands.syncExecuteCommand(id, params as object, { onlyLocal: true });
  }
}
