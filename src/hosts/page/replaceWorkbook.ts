import type { IWorkbookData, Univer } from "@univerjs/core";
import { IUniverInstanceService, UniverInstanceType } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { allComputed } from "../../engine/allComputed";
import { respellWorkbook } from "../../engine/respell";
import { within } from "../../engine/within";
import { typeInCells } from "./typeInCells";

/** So many seconds a workbook may take to compute before it is given up. */
const PATIENCE = 60;
const TOO_LONG = `it takes more than ${PATIENCE} seconds to compute`;

/**
 * Puts another workbook in the place of the open one, which is let go only when the other is there and
 * computed: where that fails, everything is as it was. `prepare` may change the other one first.
 */
export async function replaceWorkbook(
  univer: Univer,
  api: FUniver,
  data: IWorkbookData,
  prepare: () => void = () => undefined,
): Promise<void> {
  const instances = univer.__getInjector().get(IUniverInstanceService);
  const formula = api.getFormula();
  const before = api.getActiveWorkbook()!.getId();
  const place = document.querySelector<HTMLElement>("#workbook")!;
  // What is typed while the other one is computed would belong to neither.
  place.inert = true;
  try {
    // The engine looks names up in the workbook that is current.
    instances.createUnit(UniverInstanceType.UNIVER_SHEET, respellWorkbook(data, "excel"));
    prepare();
    formula.executeCalculation();
    await within(PATIENCE, allComputed(univer), TOO_LONG);
    instances.disposeUnit(before);
  } catch (error) {
    formula.stopCalculation();
    instances.setCurrentUnitForType(before);
    instances.disposeUnit(data.id);
    throw error;
  } finally {
    place.inert = false;
  }
  typeInCells(univer);
}
