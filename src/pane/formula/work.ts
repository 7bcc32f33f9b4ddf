import { CellError, onlyCell, type Grid } from "../../cells";
import { implementationOf } from "../../functions/implementationOf";
import type { CellValues, Port } from "../port";
import { isErrorCode } from "./errorCode";
import type { Argument } from "./argument";
import type { Call } from "./call";

/** Every function by its id, as a host calls it. */
export type Implementations = Readonly<Record<string, (...args: unknown[]) => Grid>>;

/** What a call gives before it is in a cell, or why that cannot be said yet. */
export type Worked =
  | { readonly kind: "result"; readonly grid: Grid }
  | { readonly kind: "error"; readonly code: string; readonly message: string }
  | { readonly kind: "unknown"; readonly reason: string };

/** Works a call in the page, reading the cells that it names through the host. */
export async function work(
  { entry, args }: Call,
  port: Pick<Port, "readRange">,
  implementations: Implementations,
): Promise<Worked> {
  const values: unknown[] = [];
  for (const argument of args) {
    if (argument.kind === "formula") {
      return {
        kind: "unknown",
        reason: `the sheet works out ${argument.text} once it is inserted`,
      };
    }
    try {
      values.push(await valueOf(argument, port));
    } catch {
      const reference = argument.kind === "cells" ? argument.reference : "the cells";
      return { kind: "unknown", reason: `${reference} cannot be read from here` };
    }
  }
  const grid = implementationOf(implementations, entry.id)(...values);
  const only = onlyCell(grid);
  if (only instanceof CellError) return { kind: "error", code: only.code, message: only.message };
  return { kind: "result", grid };
}

async function valueOf(argument: Argument, port: Pick<Port, "readRange">): Promise<unknown> {
  switch (argument.kind) {
    case "value":
      return argument.value;
    case "array":
      return argument.rows;
    case "cells":
      return forFunction(await port.readRange(argument.reference), argument.asText);
    default:
      return undefined;
  }
}

/** Cells as a spreadsheet passes them on: errors as such, and with `&""` everything as text. */
function forFunction(values: CellValues, asText: boolean): unknown[][] {
  return values.map((row) =>
    row.map((value) => {
      if (isErrorCode(value)) return { type: "Error", basicType: "Error", basicValue: value };
      return asText ? String(value ?? "") : value;
    }),
  );
}
