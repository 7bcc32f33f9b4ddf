import type { CellValue } from "../cells";

/** Whether a cell names nobody and nothing. Desktop Excel passes a blank cell as 0. */
export const isBlankLabel = (value: CellValue) => value === null || value === 0;
