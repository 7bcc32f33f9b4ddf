import { tellRows } from "../../cells";
import { columnLetters, type Area } from "../../formula/address";
import { splitArguments } from "../../formula/calls";
import { readArgument, type Argument } from "./argument";
import { areaOf } from "./reference";

/** What of a function's metadata tells which argument is which. */
interface Named {
  readonly id: string;
  readonly parameters: readonly { readonly name: string }[];
}

/** An argument's cells, where they are known. */
interface Placed {
  readonly name: string;
  readonly area: Area;
}

/**
 * A function's message with the sheet's own cells and rows. Of B2:B25 a function can only say "the 19th row of before",
 * which is B20; where a table is meant, or no argument by name, it is row 20 of the sheet if all columns start
 * level. Of rows that are picked out first it stays as it was said.
 */
export function inSheetRows(
  message: string,
  { parameters }: Named,
  args: readonly Argument[],
): string {
  if (args.some((argument) => argument.kind === "cells" && argument.only)) return message;
  const columns = args.flatMap((argument, index): Placed[] => {
    const name = parameters[index]?.name ?? "";
    const area = argument.kind === "cells" ? areaOf(argument.reference) : undefined;
    return area && area.endRow > area.startRow ? [{ name, area }] : [];
  });
  return tellRows(message, (nth, name) => {
    const own = columns.find((column) => column.name === name);
    const firsts = new Set((own ? [own] : columns).map(({ area }) => area.startRow));
    const [first] = firsts;
    if (first === undefined || firsts.size > 1) return undefined;
    const row = first + nth;
    if (own && own.area.startColumn === own.area.endColumn) {
      return `${own.name} in ${columnLetters(own.area.startColumn)}${row}`;
    }
    return `row ${row} of the sheet${name === undefined ? "" : ` (${name})`}`;
  });
}

/** The same for a cell's message, from the formula that fills it: one call of ours, and nothing around it. */
export function inRowsOf(message: string, formula: string, functions: readonly Named[]): string {
  const [, id = "", inside = ""] = ONE_CALL.exec(formula) ?? [];
  const entry = functions.find((each) => each.id === id.toUpperCase());
  if (!entry) return message;
  return inSheetRows(message, entry, splitArguments(inside).map(readArgument));
}

const ONE_CALL = /^=\s*SPARE\.([A-Z0-9]+)\((.*)\)\s*$/is;
