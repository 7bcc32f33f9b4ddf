import type { Judge } from "../judge";

/** A formula that stands in no cell: a table's, a name's, that of a conditional format or of a validation. */
export interface OutsideFormula {
  /** The sheet it is on; nothing for a name of the whole workbook. */
  readonly sheet: string | undefined;
  /** The cells it is for, or the name. */
  readonly place: string;
  /** What it is of, in words. */
  readonly of: string;
  /** As the file keeps it. */
  readonly formula: string;
  /** The functions of ours that it calls. */
  readonly functions: readonly string[];
  /** What it is in the copy, as the file keeps it; or why it is gone. */
  readonly became: { readonly text: string } | { readonly lost: string };
}

/** Judges formulas outside cells, and remembers what becomes of them. */
export interface Outside {
  readonly judge: Judge;
  /** Whether formulas that go on asking for the add-in refer to a name. */
  readonly isKept: (name: string) => boolean;
  readonly found: OutsideFormula[];
  /** The functions of the copy that they call. */
  readonly calls: Set<string>;
}

/** What becomes of a formula at a place; nothing where it stays as it is. */
export function settle(
  { judge, found, calls }: Outside,
  where: Pick<OutsideFormula, "sheet" | "place" | "of">,
  formula: string,
): OutsideFormula["became"] | undefined {
  const became = judge.verdictOn(formula);
  if (!became) return undefined;
  found.push({ ...where, formula, functions: judge.functionsIn(formula), became });
  if ("calls" in became) for (const call of became.calls) calls.add(call);
  return became;
}
