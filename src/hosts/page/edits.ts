import type { ICommandInfo, IExecutionOptions } from "@univerjs/core";
import { CommandType } from "@univerjs/core";

/** What changes a sheet in ways that no file keeps: what is shown, computed, or room to grow. */
const PASSING = /auto-height|worksheet-activ|calculat|-(?:row|column)-count$/;

/** Whether a command is a person's change to the workbook, rather than a result or a view of it. */
export function isEdit({ id, type }: Readonly<ICommandInfo>, options?: IExecutionOptions): boolean {
  if (type !== CommandType.MUTATION || options?.fromFormula) return false;
  if (id.startsWith("formula.mutation.")) return id.includes("defined-name");
  return id.startsWith("sheet.mutation.") && !PASSING.test(id);
}
