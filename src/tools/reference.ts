/** The reference of all functions, as a reader wants it: by family, examples with their results. */
import { readCatalogue } from "./catalogue";
import type { CatalogueFunction } from "../functions/catalogue";
import { familyTitle } from "../functions/familyTitle";
import { workExamples, type Shown } from "./examples";
import { readMethod, type Method } from "./methods/read";

export interface Family {
  readonly name: string;
  readonly title: string;
  readonly functions: readonly Entry[];
}

export interface Entry extends CatalogueFunction {
  /** How the function is typed: `SPARE.E1RM(load, reps, [reserve], [equation])`. */
  readonly signature: string;
  readonly worked: readonly WorkedExample[];
  readonly method: Method;
}

export interface WorkedExample {
  readonly formula: string;
  /** What the cells show; nothing where the example needs a sheet with data. */
  readonly shown: Shown | undefined;
}

/** The catalogue by family, with its examples worked in the spreadsheet engine. */
export async function readReference(): Promise<Family[]> {
  const { functions } = readCatalogue();
  const examples = functions.flatMap((entry) => entry.examples);
  const shown = await workExamples(examples.filter((formula) => !needsData(formula)));
  const names = [...new Set(functions.map(({ family }) => family))];
  return names.map((name) => ({
    name,
    title: familyTitle(name),
    functions: functions
      .filter(({ family }) => family === name)
      .map((entry) => ({
        ...entry,
        signature: signatureOf(entry),
        worked: entry.examples.map((formula) => ({ formula, shown: shown.get(formula) })),
        method: readMethod(name, entry.id),
      })),
  }));
}

const signatureOf = ({ name, parameters }: CatalogueFunction) =>
  `SPARE.${name}(${parameters.map((p) => (p.optional ? `[${p.name}]` : p.name)).join(", ")})`;

/** Whether a formula reads cells of a sheet, which a reference has none of. */
const needsData = (formula: string) =>
  /\b[A-Z]{1,3}\d+\b(?!\()/.test(formula.replace(/"[^"]*"/g, ""));
