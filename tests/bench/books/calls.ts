import { CellError, type Grid } from "../../../src/cells";
import type { CellValue } from "../../../src/xlsx/model";
import { call } from "../../functions/catalogue";
import type { Written } from "./arguments";

/** What a function gives for arguments, as a file holds it. */
export function valuesOf(id: string, written: readonly Written[]): CellValue[][] {
  const grid: Grid = call(id, ...written.map(({ given }) => given));
  return grid.map((row) => row.map((cell) => (cell instanceof CellError ? cell.code : cell)));
}

/** A call as a person writes it; arguments that are left out at its end are not written. */
export function callText(id: string, written: readonly Written[]): string {
  const texts = written.map(({ text }) => text).join(",");
  return `SPARE.${id}(${texts.replace(/,+$/, "")})`;
}
