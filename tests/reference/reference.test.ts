import { describe, expect, test } from "vitest";
import { readCatalogue } from "../../src/build/catalogue";
import type { Content, Grid } from "../../src/cells";
import { implementations } from "../../src/functions/implementations";
import { imbalance } from "./balancedGroups";
import { difference, shown } from "./compare";
import type { Expected, ExpectedValue, Row } from "./data";
import { referenceRows } from "./rows";

/**
 * Every published value of every function (shared/reference), through the function as a host calls it. A new
 * function, or a new row for an old one, needs no line here.
 */
const catalogue = readCatalogue();
const rows = referenceRows();
const functions = [...new Set(rows.map((row) => row.function))];

/** How hosts differ in handing over one and the same formula. */
const WAYS = [
  { way: "cells as ranges, omitted as null", ranged: true, omitted: null, all: true },
  { way: "plain cells, omitted as null", ranged: false, omitted: null, all: true },
  { way: "cells as ranges, the last ones left out", ranged: true, omitted: undefined, all: false },
  { way: "plain cells, omitted as undefined", ranged: false, omitted: undefined, all: true },
] as const;
type Way = (typeof WAYS)[number];

test("every function of the catalogue has a published or computed value to meet", () => {
  const without = catalogue.functions.filter(({ id }) => !functions.includes(id));
  expect(without.map(({ id }) => id)).toEqual([]);
});

test("every function of the catalogue has an implementation", () => {
  const without = catalogue.functions.filter(({ id }) => !(id in implementations));
  expect(without.map(({ id }) => id)).toEqual([]);
});

test("every row says where its value comes from and how it was come by", () => {
  const marks =
    /^(published-seen|computed-in-R|recalled-from-memory|by-definition|common-practice)$/;
  const bare = rows.filter(({ source, mark }) => source === "" || !marks.test(mark));
  expect(bare).toEqual([]);
});

for (const id of functions) {
  if (!(id in implementations)) {
    test.todo(`${id} meets its reference values`);
    continue;
  }
  describe(id, () => {
    for (const row of rows.filter((one) => one.function === id)) {
      describe(title(row), () => {
        test.each(WAYS)("$way", (way) => {
          expect(failures(row, way)).toEqual([]);
        });
      });
    }
  });
}

function title(row: Row): string {
  const written = row.arguments.map((argument) =>
    Array.isArray(argument) ? `{${argument.length} rows}` : JSON.stringify(argument ?? "omitted"),
  );
  const note = row.note === undefined ? "" : `; ${row.note}`;
  return `${row.function}(${written.join(", ")}): ${row.source} (${row.mark}${note})`;
}

/** What of a row a function does not meet, a line each. */
function failures(row: Row, way: Way): string[] {
  const { expected } = row;
  const whole = call(row, way);
  if (Array.isArray(expected)) return gridFailures(row, whole, expected);
  if (isOneValue(expected)) return gridFailures(row, whole, [[expected]]);
  if ("property" in expected) {
    const problem = imbalance(row.arguments, whole, call(row, way));
    return problem === undefined ? [] : [problem];
  }
  if ("table" in expected) return tableFailures(row, whole, expected.table as ExpectedValue[][]);
  if ("rowsOfTable" in expected) {
    const { rowsOfTable, of } = expected as {
      rowsOfTable: Record<string, ExpectedValue[]>;
      of: number;
    };
    const body = Array.from({ length: of }, (_, index) => rowsOfTable[String(index + 1)] ?? null);
    return tableFailures(row, whole, body);
  }
  const parts = expected as Record<string, ExpectedValue>;
  return [...wholeFailures(row, whole, parts), ...partFailures(row, way, parts)];
}

const isOneValue = (expected: Expected): expected is ExpectedValue =>
  typeof expected !== "object" || "error" in expected;

function gridFailures(
  row: Row,
  actual: Grid,
  expected: readonly (readonly (ExpectedValue | null)[])[],
): string[] {
  const size = (grid: readonly (readonly unknown[])[]) => `${grid.length} x ${grid[0].length}`;
  if (size(actual) !== size(expected)) {
    return [`${size(actual)} cells instead of ${size(expected)}, first ${shown(actual[0][0])}`];
  }
  return expected.flatMap((cells, at) => cellFailures(row, actual[at], cells, `row ${at + 1}`));
}

function cellFailures(
  row: Row,
  actual: readonly Content[],
  expected: readonly (ExpectedValue | null)[],
  place: string,
): string[] {
  return expected.flatMap((cell, column) => {
    if (cell === null) return [];
    const problem = difference(scaled(row, actual[column]), cell, row.match);
    return problem === undefined ? [] : [`${place}, column ${column + 1}: ${problem}`];
  });
}

/** A table has a heading of text over every column; its rows are compared where the source gives them. */
function tableFailures(
  row: Row,
  actual: Grid,
  expected: readonly (readonly ExpectedValue[] | null)[],
): string[] {
  const [headings, ...body] = actual;
  if (body.length !== expected.length) {
    return [`${body.length} rows instead of ${expected.length}, first ${shown(headings[0])}`];
  }
  const bare = headings.filter((heading) => typeof heading !== "string" || heading === "");
  return [
    ...bare.map((heading) => `the heading ${shown(heading)}`),
    ...expected.flatMap((cells, at) => {
      if (cells === null) return [];
      const sizes = `row ${at + 1} has ${body[at].length} columns instead of ${cells.length}`;
      return body[at].length === cells.length
        ? cellFailures(row, body[at], cells, `row ${at + 1}`)
        : [sizes];
    }),
  ];
}

/** The result without `part`: a report of labels and values, or a row of values, in the catalogue's order. */
function wholeFailures(row: Row, whole: Grid, expected: Record<string, ExpectedValue>): string[] {
  if (row.whole === "table") return [];
  const labels = partLabels(row.function);
  const values = row.whole === "row" ? whole[0] : whole.map(([, value]) => value);
  const shape =
    row.whole === "row"
      ? whole.length === 1 && whole[0].length === labels.length
      : whole.every(({ length }) => length === 2) &&
        JSON.stringify(whole.map(([label]) => label)) === JSON.stringify(labels);
  if (!shape)
    return [`not a ${row.whole ?? "report"} of ${labels.join(", ")}: ${shown(whole[0][0])}`];
  return Object.entries(expected).flatMap(([label, value]) => {
    const isAbsent = typeof value === "object";
    const at = labels.indexOf(label);
    const problem = difference(scaled(row, values[at]), isAbsent ? "" : value, row.match, label);
    return problem === undefined ? [] : [`${label}: ${problem}`];
  });
}

/** Each part alone in one cell, and all of them down a column. */
function partFailures(row: Row, way: Way, expected: Record<string, ExpectedValue>): string[] {
  const labels = Object.keys(expected);
  const column = call(row, way, labels.map((label) => [label])); // prettier-ignore
  return labels.flatMap((label, at) => {
    const alone = call(row, way, label);
    const cells = [alone[0][0], column[at]?.[0]];
    const problem = cells
      .map((cell) => difference(scaled(row, cell), expected[label], row.match, label))
      .find((one) => one !== undefined);
    const single = alone.length === 1 && alone[0].length === 1;
    if (!single) return [`part "${label}" fills ${alone.length} x ${alone[0].length} cells`];
    return problem === undefined ? [] : [`part "${label}": ${problem}`];
  });
}

function partLabels(id: string): string[] {
  const { parameters } = catalogue.functions.find((one) => one.id === id)!;
  const { customEnumId } = parameters[parameters.length - 1];
  const choices = catalogue.enums.find((one) => one.id === customEnumId);
  if (choices === undefined) throw new Error(`the last argument of ${id} does not name its parts`);
  return choices.values.map(({ stringValue }) => stringValue);
}

/** Calls a function as the formula would arrive in one host; `part`, if given, is its last argument. */
function call(row: Row, { ranged, omitted, all }: Way, part?: string | string[][]): Grid {
  const count = catalogue.functions.find((one) => one.id === row.function)!.parameters.length;
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
  return implementations[row.function](...passed);
}

function scaled({ resultTimes = 1 }: Row, content: Content): Content {
  return typeof content === "number" && resultTimes !== 1 ? content * resultTimes : content;
}
