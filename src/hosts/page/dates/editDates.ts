import type { ICellData, Univer } from "@univerjs/core";
import { numfmt } from "@univerjs/core";
import type { ICellDataForSheetInterceptor } from "@univerjs/core";
import {
  AFTER_CELL_EDIT,
  BEFORE_CELL_EDIT,
  INumfmtService,
  SheetInterceptorService,
} from "@univerjs/sheets";
import { DATE_FORMAT } from "../../../cells/shown";

/** Before the spreadsheet's own reading and writing of formats. */
const FIRST = 1000;

const PLAIN_NUMBER = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)\s*$/;

/**
 * Lets a date be edited in a form that is read again as the same day in every language, and lets
 * a cell that once showed a date show a number when one is typed over it.
 */
export function editDatesAsDates(univer: Univer): void {
  const injector = univer.__getInjector();
  const { writeCellInterceptor } = injector.get(SheetInterceptorService);
  const formats = injector.get(INumfmtService);
  const patternAt = ({ unitId, subUnitId, row, col }: Where) =>
    formats.getValue(unitId, subUnitId, row, col)?.pattern;

  writeCellInterceptor.intercept(BEFORE_CELL_EDIT, {
    priority: FIRST,
    handler(cell, context, next) {
      const stored = context.worksheet.getCellRaw(context.row, context.col)?.v;
      const shown = typeof stored === "number" && editedDate(stored, patternAt(context));
      return shown ? { ...cell, v: shown } : next(cell);
    },
  });

  writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: FIRST,
    handler(cell, context, next) {
      const typed = cell && typedIn(cell);
      if (!typed || !PLAIN_NUMBER.test(typed) || !isDatePattern(patternAt(context))) {
        return next(cell);
      }
      const read = next(cell);
      return read && { ...read, s: { ...asStyle(read.s), n: null } };
    },
  });
}

interface Where {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly row: number;
  readonly col: number;
}

function isDatePattern(pattern: string | undefined): boolean {
  return pattern !== undefined && numfmt.isDateFormat(pattern);
}

/** A date as it stands in the editor; nothing for a cell that shows none, or a time of day only. */
function editedDate(serial: number, pattern: string | undefined): string | undefined {
  if (!isDatePattern(pattern) || !/[dy]/i.test(pattern!)) return undefined;
  const time = serial % 1 === 0 ? "" : " h:mm:ss";
  return numfmt.format(DATE_FORMAT + time, serial);
}

function typedIn({ p, v }: ICellData | ICellDataForSheetInterceptor): string {
  return p?.body ? p.body.dataStream.replace(/\r\n$/, "") : String(v ?? "");
}

const asStyle = (style: ICellData["s"]) => (typeof style === "object" ? style : {});
