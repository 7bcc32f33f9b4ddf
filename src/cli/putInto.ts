import type { CellValue } from "../xlsx/model";

/** Puts a value into rows of cells, which grow as far as it takes; what lies between is blank. */
export function putInto(rows: CellValue[][], row: number, column: number, value: CellValue): void {
  while (rows.length <= row) rows.push([]);
  const line = rows[row]!;
  while (line.length < column) line.push(null);
  line[column] = value;
}
