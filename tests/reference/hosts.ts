import type { Grid } from "../../src/cells";
import { call as callFunction, catalogue } from "../functions/catalogue";
import type { Row } from "./data";

/** How hosts differ in handing over one and the same formula. */
export const WAYS = [
  { way: "cells as ranges, omitted as null", ranged: true, omitted: null, all: true },
  { way: "plain cells, omitted as null", ranged: false, omitted: null, all: true },
  { way: "cells as ranges, the last ones left out", ranged: true, omitted: undefined, all: false },
  { way: "plain cells, omitted as undefined", ranged: false, omitted: undefined, all: true },
] as const;

export type Way = (typeof WAYS)[number];

/** Calls a function as the formula would arrive in one host; `part`, if given, is its last argument. */
export function call(row: Row, { ranged, omitted, all }: Way, part?: string | string[][]): Grid {
  const count = parametersOf(row.function).length;
  const given = [...row.arguments];
  if (part !== undefined) {
    while (given.length < count - 1) given.push(null);
    given.push(part);
  }
  while (all && given.length < count) given.push(null);
  const passed = given.map((argument) => {
    if (argument === null) return omitted;
    return ranged && !Array.isArray(argument) ? [[argument]] : argument;
  });
  return callFunction(row.function, ...passed);
}

/** The labels a function's last argument offers, in the order its report lists them. */
export function partLabels(id: string): string[] {
  const { customEnumId } = parametersOf(id).at(-1)!;
  const choices = catalogue.enums.find((one) => one.id === customEnumId);
  if (choices === undefined) throw new Error(`the last argument of ${id} does not name its parts`);
  return choices.values.map(({ stringValue }) => stringValue);
}

const parametersOf = (id: string) => catalogue.functions.find((one) => one.id === id)!.parameters;
