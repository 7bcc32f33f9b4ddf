import { splitArguments } from "../../formula/calls";
import type { CatalogueFunction } from "../../functions/catalogue";
import { argumentFor, spelled, type Argument } from "./argument";

/** A function with something in each of its places. */
export interface Call {
  readonly entry: CatalogueFunction;
  readonly args: readonly Argument[];
}

/** What was typed for each parameter, by its name. */
export type Typed = Readonly<Record<string, string>>;

export function callOf(entry: CatalogueFunction, typed: Typed): Call {
  const args = entry.parameters.map((parameter) =>
    argumentFor(parameter, typed[parameter.name] ?? ""),
  );
  return { entry, args };
}

/** The parameters that the function cannot do without and that have nothing yet. */
export function missing({ entry, args }: Call): string[] {
  return entry.parameters
    .filter(({ optional }, index) => !optional && args[index]?.kind === "omitted")
    .map(({ name }) => name);
}

/** The formula as it goes into a cell of that sheet; places left empty at the end are not written. */
export function formulaOf({ entry, args }: Call, sheet: string): string {
  const texts = args.map((argument) => spelled(argument, sheet));
  while (texts.at(-1) === "") texts.pop();
  return `=SPARE.${entry.id}(${texts.join(", ")})`;
}

/** What an example of the catalogue gives each parameter, or nothing where it is no single call. */
export function typedIn(entry: CatalogueFunction, formula: string): Typed | undefined {
  const [, id, inside = ""] = /^=SPARE\.([A-Z0-9]+)\((.*)\)$/s.exec(formula) ?? [];
  if (id !== entry.id) return undefined;
  const texts = splitArguments(inside);
  return Object.fromEntries(
    entry.parameters.map(({ name }, index) => [name, (texts[index] ?? "").trim()]),
  );
}
