import type { Parameter } from "../../functions/catalogue";
import type { Headings } from "../data";
import type { Selection } from "../port";
import type { Typed } from "./call";
import { columnOf, referenceTo } from "./reference";

/** Arguments that take a whole block of columns, not one. */
const BLOCKS = new Set(["trials", "blocks", "shares", "steps"]);

/**
 * Deals the columns of a selection out to a function's arguments: by their headings where the first
 * row has them, else in order. A function that takes a block gets the selection as one.
 */
export function dealColumns(
  parameters: readonly Parameter[],
  { sheet, address, values }: Selection,
  headings: Headings,
): Typed {
  const width = values[0]?.length ?? 0;
  const whole = referenceTo(sheet, address);
  const block = parameters.find(({ name, optional }) => !optional && BLOCKS.has(name));
  if (block && width > 1) return { [block.name]: whole };

  const column = (index: number) => referenceTo(sheet, columnOf(address, index));
  const open = parameters.filter(({ customEnumId }) => customEnumId === undefined);
  const titles = titlesOf(values);
  if (titles === undefined) {
    const inOrder = open.slice(0, width);
    return Object.fromEntries(inOrder.map(({ name }, index) => [name, column(index)]));
  }
  const dealt: Record<string, string> = {};
  const taken = new Set<number>();
  for (const { name } of open) {
    const wanted = [plain(spaced(name)), ...(headings[name] ?? [])];
    const found = titles.findIndex((title, index) => !taken.has(index) && wanted.includes(title));
    if (found === -1) continue;
    taken.add(found);
    dealt[name] = column(found);
  }
  return dealt;
}

/** The headings of a selection, in plain form, if its first row is words throughout. */
function titlesOf(values: Selection["values"]): string[] | undefined {
  const [first, ...rest] = values;
  if (!first || rest.length === 0) return undefined;
  const isWords = first.every((cell) => typeof cell === "string" && /\p{L}/u.test(cell));
  return isWords ? first.map((cell) => plain(String(cell))) : undefined;
}

/** "Load (kg)" and "load, kg" are "load". */
const plain = (heading: string) =>
  heading
    .toLowerCase()
    .replace(/\(.*?\)|[,:].*$/g, "")
    .trim();

/** "repsToFailure" is "reps to failure". */
const spaced = (name: string) => name.replace(/([A-Z])/g, " $1");
