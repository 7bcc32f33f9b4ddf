import { blocks } from "./blocks";
import { columns } from "./columns";
import { curve } from "./curve";
import { fitCurve } from "./fitCurve";
import { groupChange } from "./groupChange";
import { groups } from "./groups";
import type { Lambda } from "./lambda";
import { shapes } from "./lifted";
import { load } from "./load";
import { log } from "./log";
import { logSummary } from "./logSummary";
import { muscleSets } from "./muscleSets";
import { plan } from "./plan";
import { readers } from "./readers";
import { reliability } from "./reliability";
import { reserveCheck } from "./reserveCheck";
import { statistics } from "./statistics";
import { strength } from "./strength";
import { studies } from "./studies";
import { testing } from "./testing";
import { testingReports } from "./testingReports";
import { testTable } from "./testTable";

/*
 * The functions that a formula can express, as formulas: what a copy for people without the add-in
 * calculates with.
 */

export type { Lambda } from "./lambda";

/** Everything a copy may need, by name. */
export const lambdas: ReadonlyMap<string, Lambda> = byName([
  ...[...readers, ...shapes, ...columns, ...curve, ...statistics],
  ...[
    ...strength,
    ...fitCurve,
    ...load,
    ...plan,
    ...blocks,
    ...log,
    ...logSummary,
    ...muscleSets,
    ...reserveCheck,
    ...testing,
    ...testingReports,
    ...reliability,
    ...groups,
    ...groupChange,
    ...testTable,
    ...studies,
  ],
]);

/** Functions by name. Two of one name are refused: a copy would calculate with the second in the place of the first. */
export function byName(all: readonly Lambda[]): ReadonlyMap<string, Lambda> {
  const found = new Map<string, Lambda>();
  for (const lambda of all) {
    if (found.has(lambda.name)) throw new Error(`two functions of the copy are ${lambda.name}`);
    found.set(lambda.name, lambda);
  }
  return found;
}

/** What the names of these functions start with in a workbook. */
export const PREFIX = "PORTABLE_";

/** A function's formula as a person reads it: the LAMBDA that its name stands for. */
export function lambdaText({ parameters, body }: Lambda): string {
  const names = parameters.map(({ name }) => name).join(",");
  return `LAMBDA(${names},${body.replace(REFERENCE, (_, name: string) => PREFIX + name)})`;
}

const REFERENCE = /\{([A-Z][A-Z0-9]*)\}/g;

/** The names of the functions that these use, themselves among them, each after those it uses. */
export function withHelpers(names: Iterable<string>): string[] {
  const found = new Set<string>();
  const visit = (name: string) => {
    if (found.has(name)) return;
    for (const [, used = ""] of lambdas.get(name)!.body.matchAll(REFERENCE)) visit(used);
    found.add(name);
  };
  for (const name of names) visit(name);
  return [...found];
}
