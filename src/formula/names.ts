import { plainFormula } from "./plain";
import type { Standing, Table } from "./tables";
import { tokensOf } from "./tokens";

/** A name for a formula or a range. */
export interface Name {
  readonly name: string;
  /** As a file has it, without "=". */
  readonly text: string;
  /** The only sheet where it is known. */
  readonly sheet?: string;
}

/** What a name means on a sheet: its own meaning there, before that in all of the workbook. */
export function nameOn(sheet: string, text: string, names: readonly Name[]): Name | undefined {
  const found = names.filter(({ name }) => name.toLowerCase() === text.toLowerCase());
  return found.find((name) => name.sheet === sheet) ?? found.find((name) => !name.sheet);
}

/**
 * The formula with what its names mean written out, where a name means that on one sheet alone: an
 * engine that knows no such names can compute it.
 */
export function withoutLocalNames(
  formula: string,
  names: readonly Name[],
  tables: readonly Table[],
  standing: Standing,
): string {
  if (!names.some(({ sheet }) => sheet !== undefined)) return formula;
  return tokensOf(formula)
    .map(({ kind, text }) => {
      const name = kind === "name" ? nameOn(standing.sheet, text, names) : undefined;
      if (!name || !isLocal(name, names)) return text;
      return `(${plainFormula(name.text, tables, standing).slice(1)})`;
    })
    .join("");
}

/** Whether a name has a meaning on one sheet alone, this or another. */
function isLocal({ name }: Name, names: readonly Name[]): boolean {
  return names.some(
    (other) => other.sheet !== undefined && other.name.toLowerCase() === name.toLowerCase(),
  );
}
