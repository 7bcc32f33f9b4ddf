import type { Content, Grid } from "../../src/cells";
import { imbalance } from "./balancedGroups";
import { difference, shown } from "./compare";
import type {
  Expected,
  ExpectedGrid,
  ExpectedParts,
  ExpectedProperty,
  ExpectedRows,
  ExpectedTable,
  ExpectedValue,
  Row,
} from "./data";
import { call, partLabels, type Way } from "./hosts";

/** What of a row a function does not meet in one host's way of calling it, a line each. */
export function failures(row: Row, way: Way): string[] {
  const { expected } = row;
  const whole = call(row, way);
  if (isGrid(expected)) return gridFailures(row, whole, expected);
  if (isOneValue(expected)) return gridFailures(row, whole, [[expected]]);
  if (isTable(expected)) return tableFailures(row, whole, expected.table);
  if (isRows(expected)) return tableFailures(row, whole, givenRows(expected));
  if (isProperty(expected)) return propertyFailures(expected, row, whole, call(row, way));
  return [...wholeFailures(row, whole, expected), ...partFailures(row, way, expected)];
}

const isGrid = (expected: Expected): expected is ExpectedGrid => Array.isArray(expected);
const isOneValue = (expected: Expected): expected is ExpectedValue =>
  typeof expected !== "object" || "error" in expected;
const isTable = (expected: object): expected is ExpectedTable => "table" in expected;
const isRows = (expected: object): expected is ExpectedRows => "rowsOfTable" in expected;
const isProperty = (expected: object): expected is ExpectedProperty => "property" in expected;

const givenRows = ({ rowsOfTable, of }: ExpectedRows) =>
  Array.from({ length: of }, (_, at) => rowsOfTable[String(at + 1)] ?? null);

function propertyFailures({ property }: ExpectedProperty, row: Row, result: Grid, again: Grid) {
  if (property !== "balanced groups") return [`nobody knows how to check "${property}"`];
  const problem = imbalance(row.arguments, result, again);
  return problem === undefined ? [] : [problem];
}

function gridFailures(row: Row, actual: Grid, expected: ExpectedGrid): string[] {
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
function wholeFailures(row: Row, whole: Grid, expected: ExpectedParts): string[] {
  if (row.whole === "table") return [];
  const labels = partLabels(row.function);
  const values = row.whole === "row" ? whole[0] : whole.map(([, value]) => value);
  const shape =
    row.whole === "row"
      ? whole.length === 1 && whole[0].length === labels.length
      : whole.every(({ length }) => length === 2) &&
        JSON.stringify(whole.map(([label]) => label)) === JSON.stringify(labels);
  if (!shape) {
    return [`not a ${row.whole ?? "report"} of ${labels.join(", ")}: ${shown(whole[0][0])}`];
  }
  return Object.entries(expected).flatMap(([label, value]) => {
    const isAbsent = typeof value === "object";
    const at = labels.indexOf(label);
    const problem = difference(scaled(row, values[at]), isAbsent ? "" : value, row.match, label);
    return problem === undefined ? [] : [`${label}: ${problem}`];
  });
}

/** Each part alone in one cell, and all of them down a column. */
function partFailures(row: Row, way: Way, expected: ExpectedParts): string[] {
  const labels = Object.keys(expected);
  const asked = labels.map((label) => [label]);
  const together = askedFailures(row, call(row, way, asked), asked, expected);
  const alone = labels.flatMap((label) =>
    askedFailures(row, call(row, way, label), [[label]], expected),
  );
  return [...alone, ...together];
}

/** Parts in the shape in which they were asked for. */
function askedFailures(
  row: Row,
  actual: Grid,
  asked: readonly (readonly string[])[],
  expected: ExpectedParts,
): string[] {
  if (actual.length !== asked.length || actual.some(({ length }) => length !== 1)) {
    return [`${asked.length} parts fill ${actual.length} x ${actual[0].length} cells`];
  }
  return asked.flatMap(([label], at) => {
    const problem = difference(scaled(row, actual[at][0]), expected[label], row.match, label);
    return problem === undefined ? [] : [`part "${label}" of ${asked.length}: ${problem}`];
  });
}

function scaled({ resultTimes = 1 }: Row, content: Content): Content {
  return typeof content === "number" && resultTimes !== 1 ? content * resultTimes : content;
}
