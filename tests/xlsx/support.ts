import { readFileSync } from "node:fs";
import { join } from "node:path";
import { elementAt } from "../present";

export const files = ["xlsxwriter", "openpyxl", "exceljs", "libreoffice"] as const;

/** The bytes of one of the workbooks in `files/`. */
export function bytesOf(name: string): Uint8Array {
  return new Uint8Array(readFileSync(join(import.meta.dirname, "files", `${name}.xlsx`)));
}

/** Turns every bit of one byte over, as happens to files. */
export function damage(bytes: Uint8Array, place: number): void {
  bytes[place] = elementAt(bytes, place) ^ 0xff;
}
