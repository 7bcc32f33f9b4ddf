import { fromFile } from "./future";
import type { Standing, Table } from "./tables";
import { resolveTables } from "./tables";

/**
 * A file's formula as every spreadsheet can follow it, with its "=": functions without a file's marks
 * and references into tables as plain ranges.
 */
export function plainFormula(text: string, tables: readonly Table[], standing: Standing): string {
  return `=${resolveTables(fromFile(text), tables, standing)}`;
}
