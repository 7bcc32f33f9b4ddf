import { fromFile } from "../formula/future";
import { resolveTables, type Standing } from "../formula/tables";
import { tokensOf } from "../formula/tokens";
import type { Book, BookName } from "./book";

/** A formula of a file as the formula engine reads it, with its "=". */
export function engineFormula(text: string, book: Book, standing: Standing): string {
  return withoutLocalNames(plainFormula(text, book, standing), book, standing);
}

/** The same with its names as they are. */
export function plainFormula(text: string, book: Book, standing: Standing): string {
  const plain = resolveTables(fromFile(text), book.tables, standing);
  return `=${plain.replace(spillReference, "$1#")}`;
}

/** A file writes "all that spills from A1", `A1#`, as a function of its own. */
const spillReference = /\bANCHORARRAY\(((?:'(?:[^']|'')*'!|[\p{L}\p{N}_.]+!)?\$?[A-Z]+\$?\d+)\)/giu;

/** The engine knows no names that mean another thing on every sheet, so what they mean is written out. */
function withoutLocalNames(formula: string, book: Book, standing: Standing): string {
  if (!book.names.some(({ sheet }) => sheet !== undefined)) return formula;
  return tokensOf(formula)
    .map(({ kind, text }) => {
      const name = kind === "name" ? nameOn(standing.sheet, text, book.names) : undefined;
      if (!name || !isLocal(name, book.names)) return text;
      return `(${plainFormula(name.text, book, standing).slice(1)})`;
    })
    .join("");
}

/** What a name means on a sheet: its own meaning there, before that in all of the workbook. */
export function nameOn(
  sheet: string,
  text: string,
  names: readonly BookName[],
): BookName | undefined {
  const found = names.filter(({ name }) => name.toLowerCase() === text.toLowerCase());
  return found.find((name) => name.sheet === sheet) ?? found.find((name) => !name.sheet);
}

/** Whether a name has a meaning on one sheet alone, this or another. */
function isLocal({ name }: BookName, names: readonly BookName[]): boolean {
  return names.some(
    (other) => other.sheet !== undefined && other.name.toLowerCase() === name.toLowerCase(),
  );
}
