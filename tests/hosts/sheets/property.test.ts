import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { call, functions } from "../../functions/catalogue";
import { sample } from "../../functions/calls";
import { asText, faultOf } from "../../functions/faults";
import { anyArgument, hostileCells, wrappings } from "../../functions/hostile";
import { layouts } from "../../functions/plausible";
import { only } from "../../present";
import { shownInSheets, sheetsHost } from "./host";
import { load } from "./load";

const sheets = sheetsHost(load());

/** Whether Sheets has such an argument: a cell, or rows of one width; no data types, no minus zero. */
function isOfSheets(argument: unknown): boolean {
  if (!Array.isArray(argument)) return isPlain(argument);
  const rows = argument as unknown[];
  return (
    rows.length > 0 &&
    rows.every(
      (row) =>
        Array.isArray(row) &&
        row.length > 0 &&
        row.length === (rows[0] as unknown[]).length &&
        row.every(isPlain),
    )
  );
}

const isPlain = (cell: unknown) => typeof cell !== "object" && !Object.is(cell, -0);

describe.each(functions.map((entry) => [entry.id, entry] as const))("%s in Sheets", (id, entry) => {
  const { parameters } = entry;

  const check = (args: readonly unknown[]) => {
    const result = sheets.call(id, args);
    expect(faultOf(result, args), `${id} ${asText(args)}`).toBeUndefined();
    return result;
  };

  it("gives for arguments as a coach would give them what the function gives", () => {
    for (const layout of layouts) {
      for (const args of sample(entry, layout, 3)) {
        expect(shownInSheets(check(args)), `${id} ${asText(args)}`).toEqual(
          shownInSheets(call(id, ...args)),
        );
      }
    }
  });

  it("has a presentable result for every kind of cell", () => {
    const args = only(sample(entry, "column", 1));
    // Every cell in every argument is for the functions' own test; here each cell has its turn somewhere.
    hostileCells.forEach((cell, at) => {
      for (const wrap of [wrappings.alone, wrappings["in a column"]]) {
        check(args.map((given, index) => (index === at % parameters.length ? wrap(cell) : given)));
      }
    });
  });

  it("has a presentable result for any arguments", () => {
    fc.assert(
      fc.property(fc.tuple(...parameters.map(() => anyArgument)), (args) => {
        const result = check(args);
        if (args.every(isOfSheets) && !parameters.some(({ name }) => name === "date")) {
          expect(shownInSheets(result)).toEqual(shownInSheets(call(id, ...args)));
        }
      }),
      { numRuns: 25 },
    );
  });
});
