import type { Univer } from "@univerjs/core";
import { InterceptorEffectEnum } from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import { keptFormulaOf } from "../../../engine/keptFormulas";

/** The corner of a cell whose formula is not computed here. */
const MARK = { tr: { color: "#8a3b12", size: 7 } };

/** Marks cells that keep their file's value because the page cannot compute their formula. */
export function markKeptFormulas(univer: Univer): void {
  univer
    .__getInjector()
    .get(SheetInterceptorService)
    .intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
      effect: InterceptorEffectEnum.Style,
      handler(cell, { row, col, worksheet }, next) {
        const isKept = keptFormulaOf(worksheet.getCellRaw(row, col)) !== undefined;
        return next(isKept ? { ...cell, markers: { ...cell?.markers, ...MARK } } : cell);
      },
    });
}
