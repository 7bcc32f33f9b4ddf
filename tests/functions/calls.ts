import fc from "fast-check";
import { call, type functions } from "./catalogue";
import { asText, faultOf } from "./faults";
import { only } from "../present";
import type { HostileCall } from "./matrix";
import { plausibleArguments, type Layout } from "./plausible";

export type Entry = (typeof functions)[number];

/** Runs a call; what is wrong with its result, with the call, or nothing. */
export function faultOfCall(id: string, args: unknown[]): string | undefined {
  try {
    const fault = faultOf(call(id, ...args), args);
    return fault === undefined ? undefined : `${id} ${asText(args)}: ${fault}`;
  } catch (error) {
    return `${id} ${asText(args)} threw ${String(error)}`;
  }
}

/** The first fault of some calls with a hostile cell among arguments that make sense. */
export function firstFault(entry: Entry, calls: readonly HostileCall[]): string | undefined {
  const plausible = { single: one(entry, "single"), "headed column": one(entry, "headed column") };
  for (const { layout, position, wrap, cell } of calls) {
    const args = plausible[layout];
    const fault = faultOfCall(entry.id, replaced(args, position, wrap(cell)));
    if (fault !== undefined) return fault;
  }
  return undefined;
}

export const replaced = (args: readonly unknown[], position: number, argument: unknown) =>
  args.map((given, index) => (index === position ? argument : given));

/** Arguments the function could be called with. */
export const sample = (entry: Entry, layout: Layout, count: number): unknown[][] =>
  fc.sample(plausibleArguments(entry, layout), count);

const one = (entry: Entry, layout: Layout): unknown[] => only(sample(entry, layout, 1));
