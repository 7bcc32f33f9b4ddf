import { CellError, onlyCell, type Content, type Grid } from "../../cells";
import { implementationOf } from "../../functions/implementationOf";
import { besideRows, type Rows, type RowsApart } from "../insert/besideRows";
import type { CellValues, Port } from "../port";
import { isErrorCode } from "./errorCode";
import type { Argument, Only } from "./argument";
import type { Call } from "./call";
import { isSameName } from "./mixed";
import { inSheetRows } from "./sheetRows";

/** Every function by its id, as a host calls it. */
export type Implementations = Readonly<Record<string, (...args: unknown[]) => Grid>>;

/** What a call gives before it is in a cell, or why that cannot be said yet. */
export type Worked =
  | {
      readonly kind: "result";
      readonly grid: Grid;
      /** The rows it goes beside, where the function answers row by row. */
      readonly beside: Rows | RowsApart | undefined;
    }
  | { readonly kind: "error"; readonly code: string; readonly message: string }
  | { readonly kind: "unknown"; readonly reason: string };

/** Works a call in the page, reading the cells that it names through the host. */
export async function work(
  { entry, args }: Call,
  port: Pick<Port, "readRange">,
  implementations: Implementations,
): Promise<Worked> {
  const values: unknown[] = [];
  const reading = readingOnce(port);
  for (const argument of args) {
    if (argument.kind === "formula") {
      return {
        kind: "unknown",
        reason: `the sheet works out ${argument.text} once it is inserted`,
      };
    }
    try {
      values.push(await valueOf(argument, reading));
    } catch {
      const reference = argument.kind === "cells" ? argument.reference : "the cells";
      return { kind: "unknown", reason: `${reference} cannot be read from here` };
    }
  }
  const implementation = implementationOf(implementations, entry.id);
  const grid = implementation(...values);
  const only = onlyCell(grid);
  if (only instanceof CellError) {
    return { kind: "error", code: only.code, message: inSheetRows(only.message, entry, args) };
  }
  const shown = grid.map((row) => row.map((content) => withSheetRows(content, entry, args)));
  return { kind: "result", grid: shown, beside: besideRows(args, values, grid, implementation) };
}

const withSheetRows = (content: Content, entry: Call["entry"], args: readonly Argument[]) =>
  content instanceof CellError
    ? new CellError(content.code, inSheetRows(content.message, entry, args))
    : content;

async function valueOf(argument: Argument, port: Pick<Port, "readRange">): Promise<unknown> {
  switch (argument.kind) {
    case "value":
      return argument.value;
    case "array":
      return argument.rows;
    case "cells": {
      const kept = await onlyRows(await port.readRange(argument.reference), argument.only, port);
      return forFunction(kept, argument.asText);
    }
    default:
      return undefined;
  }
}

/** Reads a range once, however many arguments ask for it: the column of lifters beside each of theirs. */
function readingOnce(port: Pick<Port, "readRange">): Pick<Port, "readRange"> {
  const read = new Map<string, Promise<CellValues>>();
  return {
    readRange(reference) {
      const known = read.get(reference) ?? port.readRange(reference);
      read.set(reference, known);
      return known;
    },
  };
}

/** The rows in which every other column says what it should, as FILTER keeps them. */
async function onlyRows(
  values: CellValues,
  only: readonly Only[] = [],
  port: Pick<Port, "readRange">,
): Promise<CellValues> {
  let kept = values.map((row, index) => ({ row, index }));
  for (const { reference, is } of only) {
    const keys = await port.readRange(reference);
    kept = kept.filter(({ index }) => isSameName(keys[index]?.[0], is));
  }
  return kept.map(({ row }) => row);
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
