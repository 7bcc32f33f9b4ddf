import type { Only } from "./argument";
import type { Call } from "./call";
import { areaOf } from "./reference";

/** The call on those rows alone in which another column says so: every column of the same rows is cut down to them. */
export function narrowed(call: Call, only: readonly Only[]): Call {
  const [first] = only;
  const rows = first && areaOf(first.reference);
  if (!rows) return call;
  const args = call.args.map((argument) => {
    const area = argument.kind === "cells" ? areaOf(argument.reference) : undefined;
    const isOfTheRows =
      area?.startRow === rows.startRow && area.endRow === rows.endRow && area.sheet === rows.sheet;
    return isOfTheRows ? { ...argument, only } : argument;
  });
  return { ...call, args };
}
