import { CellError, onlyCell, type ErrorCode, type Grid } from "../../cells";
import type { CustomFunctionsHost, ExcelErrorName } from "./runtime";

const NAMES: Readonly<Record<ErrorCode, ExcelErrorName>> = {
  "#VALUE!": "invalidValue",
  "#N/A": "notAvailable",
  "#DIV/0!": "divisionByZero",
  "#NUM!": "invalidNumber",
  "#NULL!": "nullReference",
};

/** Only these two show a message; the others refuse one. */
const WITH_MESSAGE: readonly ErrorCode[] = ["#VALUE!", "#N/A"];

/**
 * A result as Excel takes it: a matrix, errors as Excel's error objects in their cells. A call that is nothing
 * but an error throws it, which is the form that shows its message on every Excel.
 */
export function toExcel(grid: Grid, host: CustomFunctionsHost): unknown[][] {
  const only = onlyCell(grid);
  if (only instanceof CellError) {
    // eslint-disable-next-line @typescript-eslint/only-throw-error -- the platform takes its own kind
    throw excelError(only, host);
  }
  return grid.map((row) =>
    row.map((content) => (content instanceof CellError ? excelError(content, host) : content)),
  );
}

function excelError({ code, message }: CellError, host: CustomFunctionsHost): object {
  const excelCode = host.ErrorCode[NAMES[code]];
  return WITH_MESSAGE.includes(code)
    ? new host.Error(excelCode, message)
    : new host.Error(excelCode);
}
