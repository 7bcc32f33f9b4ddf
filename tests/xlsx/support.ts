import { readFileSync } from "node:fs";
import { join } from "node:path";

export const files = ["xlsxwriter", "openpyxl", "exceljs", "libreoffice"] as const;

/** The bytes of one of the workbooks in `files/`. */
export function bytesOf(name: string): Uint8Array {
  return new Uint8Array(readFileSync(join(import.meta.dirname, "files", `${name}.xlsx`)));
}
