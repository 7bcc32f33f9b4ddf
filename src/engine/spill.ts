import type { IRange, Univer } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { Place } from "./messages";

/** The cells that the formula at `place` spills over, its own among them; nothing if it does not. */
export function spillAt(
  univer: Univer,
  { unitId, sheetId, row, column }: Place,
): IRange | undefined {
  const ranges = univer.__getInjector().get(FormulaDataModel).getArrayFormulaRange();
  return ranges[unitId]?.[sheetId]?.[row]?.[column];
}
