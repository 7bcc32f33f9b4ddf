import type { Parameter } from "../../functions/catalogue";
import type { Headings } from "../data";
import type { Selection } from "../port";
import type { Typed } from "./call";
import { columnsByHeading, titlesOf } from "./headings";
import { columnOf, referenceTo } from "./reference";

/** Arguments that take a whole block of columns, not one. */
const BLOCKS = new Set(["trials", "blocks", "shares", "steps"]);

/**
 * Deals the columns of a selection out to a function's arguments: by their headings where the first
 * row has them, else in order. A function that takes a block gets the selection as one.
 *
 * The headings' own row is left out, except where the function reads them (a table that is named by them).
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

  const open = parameters.filter(({ customEnumId }) => customEnumId === undefined);
  const titles = titlesOf(values);
  const left = titles === undefined || readsHeadings(parameters) ? 0 : 1;
  const column = (index: number) => referenceTo(sheet, columnOf(address, index, left));
  if (titles === undefined) {
    const inOrder = open.slice(0, width);
    return Object.fromEntries(inOrder.map(({ name }, index) => [name, column(index)]));
  }
  const found = columnsByHeading(open, titles, headings);
  return Object.fromEntries([...found].map(([name, index]) => [name, column(index)]));
}

/** Whether a function names its results by the headings of what it reads. */
const readsHeadings = (parameters: readonly Parameter[]) =>
  parameters.some(({ name, description }) => name === "by" || /\bheading/i.test(description));
