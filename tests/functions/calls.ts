import fc from "fast-check";
import { expect } from "vitest";
import { call, type functions } from "./catalogue";
import { asText, faultOf } from "./faults";
import { anyArgument } from "./hostile";
import { only } from "../present";
import { seed } from "../random";
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

/** Calls a function with whatever its arguments may be, as often as this; other calls for each `which`. */
export function expectNoFaultOfAnyCall({ id, parameters }: Entry, times: number, which = 0): void {
  fc.assert(
    fc.property(fc.tuple(...parameters.map(() => anyArgument)), (args) => {
      const fault = faultOfCall(id, args);
      if (fault !== undefined) expect.fail(fault);
    }),
    { numRuns: times, seed: seed + which },
  );
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
