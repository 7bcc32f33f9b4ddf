import { fromFile } from "../xlsx/formula/future";
import { resolveTables, type Standing } from "../xlsx/formula/tables";
import type { Book } from "./book";

/** A formula of a file as the formula engine reads it, with its "=". */
export function engineFormula(text: string, book: Book, standing: Standing): string {
  const plain = resolveTables(fromFile(text), book.tables, standing);
  return `=${plain.replace(spillReference, "$1#")}`;
}

/** A file writes "all that spills from A1", `A1#`, as a function of its own. */
const spillReference = /\bANCHORARRAY\(((?:'(?:[^']|'')*'!|[\p{L}\p{N}_.]+!)?\$?[A-Z]+\$?\d+)\)/giu;
