import type { Parameter } from "../../functions/catalogue";
import type { Headings } from "../data";
import { argumentWords } from "./argumentWords";

/** What a column is wanted for: an argument, by its name and what is said of it. */
export type Wanted = Pick<Parameter, "name" | "description">;

/** Which column each argument takes, by the columns' headings; an argument without a column is left out. */
export function columnsByHeading(
  parameters: readonly Wanted[],
  titles: readonly string[],
  headings: Headings,
): Map<string, number> {
  const found = new Map<string, number>();
  const plainTitles = titles.map(plainHeading);
  // What fits exactly is dealt first, so that "planned load" never takes the place of "load".
  for (const fits of [isExactly, beginsOrEndsWith]) {
    for (const parameter of parameters) {
      if (found.has(parameter.name)) continue;
      const wanted = wantedBy(parameter, headings);
      const taken = new Set(found.values());
      const index = plainTitles.findIndex(
        (title, column) => !taken.has(column) && wanted.some((words) => fits(title, words)),
      );
      if (index !== -1) found.set(parameter.name, index);
    }
  }
  dealTestDays(parameters, plainTitles, found);
  return found;
}

/** The headings an argument goes by. One that is a target takes no column of what was done. */
function wantedBy({ name, description }: Wanted, headings: Headings): string[] {
  const own = [argumentWords(name).toLowerCase(), ...(headings[name] ?? [])];
  if (!/^Target\b/.test(description)) return own;
  const capital = name.charAt(0).toUpperCase() + name.slice(1);
  const asked = headings[`planned${capital}`] ?? [];
  const aimed = headings[`target${capital}`] ?? [];
  return [...own.filter((words) => !DONE.test(words)), ...aimed, ...asked];
}

/** Words of a set that has been done, and of one that is still to be. */
const DONE = /\b(?:done|left|called|actual)\b/;
const ANOTHER = /\b(?:done|left|called|actual|planned|plan|target|goal|next|last)\b/;

const isExactly = (title: string, words: string) => title === words;

/** "pre squat" begins with "pre", "squat e1rm" ends with "e1rm"; but a "planned load" is not a "load". */
const beginsOrEndsWith = (title: string, words: string) =>
  (title.startsWith(`${words} `) || title.endsWith(` ${words}`)) &&
  (!ANOTHER.test(title) || ANOTHER.test(words));

const MONTH = /^(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\b/;
const TEST = /^(?:test|week|day|trial)\s*\d+\b/;

/** Two test days under the names of months or numbers: the first is before, the last after. */
function dealTestDays(
  parameters: readonly Wanted[],
  titles: readonly string[],
  found: Map<string, number>,
): void {
  const isOpen = ["before", "after"].every(
    (name) => parameters.some((parameter) => parameter.name === name) && !found.has(name),
  );
  const days = titles.flatMap((title, column) =>
    MONTH.test(title) || TEST.test(title) ? [column] : [],
  );
  const [first] = days;
  const last = days.at(-1);
  if (!isOpen || days.length !== 2 || first === undefined || last === undefined) return;
  found.set("before", first);
  found.set("after", last);
}

/** "Load (kg)", "load, kg" and "LOAD_kg" are "load"; "post-test" is "post test". */
export const plainHeading = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/\(.*?\)|[,:].*$/g, "")
    .replace(/[-_\s]+/g, " ")
    .replace(/(?<=.) (?:kg|kgs|lb|lbs)$/, "")
    .trim();

/** The headings of a selection, if its first row is words throughout and something stands under it. */
export function titlesOf(values: readonly (readonly unknown[])[]): string[] | undefined {
  const [first, ...rest] = values;
  const isWords = first?.every((cell) => typeof cell === "string" && /\p{L}/u.test(cell));
  return isWords && rest.length > 0 ? first?.map(String) : undefined;
}
