import type { CellValue } from "../../xlsx/model";
import { uncertain } from "./operators";

/** Half away from zero, as the digits say that a cell shows. */
export function round(value: number, digits: number): CellValue {
  if (!Number.isInteger(digits) || digits < 0 || digits > 9) return uncertain();
  const scale = 10 ** digits;
  const rounded = nearest(Math.abs(value) * scale) / scale;
  return value < 0 && rounded !== 0 ? -rounded : rounded;
}

/** To the nearest multiple. */
export function roundToMultiple(value: number, multiple: number): CellValue {
  if (!(value >= 0 && multiple > 0)) return uncertain();
  const count = value / multiple;
  return isHalf(count) ? uncertain() : Math.round(count) * multiple;
}

/** What is a half to nine digits, but not quite, goes either way. */
function nearest(size: number): number {
  if (size > 1e14 || (isHalf(size) && size % 1 !== 0.5)) return uncertain();
  return Math.floor(size + 0.5);
}

const isHalf = (size: number) => Math.abs((size % 1) - 0.5) <= 1e-9 * Math.max(1, size);
