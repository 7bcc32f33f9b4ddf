/** The reference of all functions, as a reader wants it: by family, examples with their results. */
import type { Catalogue, CatalogueFunction } from "./catalogueTypes";
import type { EvaluateExample } from "./examples";

export interface Family {
  readonly name: string;
  readonly title: string;
  readonly functions: readonly Entry[];
}

export interface Entry extends CatalogueFunction {
  /** How the function is typed: `SPARE.E1RM(load, reps, [reserve], [equation])`. */
  readonly signature: string;
  readonly worked: readonly WorkedExample[];
}

export interface WorkedExample {
  readonly formula: string;
  /** What the cells show, a row a row; none where the example needs a sheet with data. */
  readonly shown: readonly (readonly string[])[] | undefined;
}

/** Gathers the catalogue by family and works its examples in the spreadsheet engine. */
export async function referenceOf(
  catalogue: Catalogue,
  evaluate: EvaluateExample,
): Promise<Family[]> {
  const families: (Family & { functions: Entry[] })[] = [];
  for (const entry of catalogue.functions) {
    let family = families.find(({ name }) => name === entry.family);
    if (family === undefined) {
      const title = entry.family[0].toUpperCase() + entry.family.slice(1);
      family = { name: entry.family, title, functions: [] };
      families.push(family);
    }
    const worked = [];
    for (const formula of entry.examples) {
      worked.push({ formula, shown: needsData(formula) ? undefined : await evaluate(formula) });
    }
    family.functions.push({ ...entry, signature: signatureOf(entry), worked });
  }
  return families;
}

export const signatureOf = ({ name, parameters }: CatalogueFunction) =>
  `SPARE.${name}(${parameters.map((p) => (p.optional ? `[${p.name}]` : p.name)).join(", ")})`;

/** Whether a formula reads cells of a sheet, which a reference has none of. */
const needsData = (formula: string) =>
  /\b[A-Z]{1,3}\d+\b(?!\()/.test(formula.replace(/"[^"]*"/g, ""));
