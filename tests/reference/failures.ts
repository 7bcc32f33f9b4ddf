import { version } from "../../package.json";
import type { Content, Grid } from "../../src/cells";
import { cellAt, elementAt, named } from "../present";
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
  if (property === "the package's version") return gridFailures(row, result, [[version]]);
  if (property !== "balanced groups") return [`nobody knows how to check "${property}"`];
  const problem = imbalance(row.arguments, result, again);
  return problem === undefined ? [] : [problem];
}

function gridFailures(row: Row, actual: Grid, expected: ExpectedGrid): string[] {
  if (size(actual) !== size(expected)) {
    const first = shown(cellAt(actual, 0, 0));
    return [`${size(actual)} cells instead of ${size(expected)}, first ${first}`];
  }
  return expected.flatMap((cells, at) =>
    cellFailures(row, elementAt(actual, at), cells, `row ${at + 1}`),
  );
}

const size = (grid: readonly (readonly unknown[])[]) =>
  `${grid.length} x ${elementAt(grid, 0).length}`;

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
  const headings = elementAt(actual, 0);
  const body = actual.slice(1);
  if (body.length !== expected.length) {
    return [`${body.length} rows instead of ${expected.length}, first ${shown(headings[0])}`];
  }
  const bare = headings.filter((heading) => typeof heading !== "string" || heading === "");
  return [
    ...bare.map((heading) => `the heading ${shown(heading)}`),
    ...expected.flatMap((cells, at) => {
      if (cells === null) return [];
      const own = elementAt(body, at);
      return own.length === cells.length
        ? cellFailures(row, own, cells, `row ${at + 1}`)
        : [`row ${at + 1} has ${own.length} columns instead of ${cells.length}`];
    }),
  ];
}

/** The result without `part`: a report of labels and values, or a row of values, in the catalogue's order. */
function wholeFailures(row: Row, whole: Grid, expected: ExpectedParts): string[] {
  if (row.whole === "table") return [];
  const labels = partLabels(row.function);
  const first = elementAt(whole, 0);
  const values = row.whole === "row" ? first : whole.map(([, value]) => value);
  const shape =
    row.whole === "row"
      ? whole.length === 1 && first.length === labels.length
      : whole.every(({ length }) => length === 2) &&
        JSON.stringify(whole.map(([label]) => label)) === JSON.stringify(labels);
  if (!shape) {
    return [`not a ${row.whole ?? "report"} of ${labels.join(", ")}: ${shown(first[0])}`];
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
  const together = call(
    row,
    way,
    labels.map((label) => [label]),
  );
  const alone = labels.flatMap((label) =>
    askedFailures(row, call(row, way, label), [label], expected),
  );
  return [...alone, ...askedFailures(row, together, labels, expected)];
}

/** Parts that were asked for, one below the other. */
function askedFailures(
  row: Row,
  actual: Grid,
  labels: readonly string[],
  expected: ExpectedParts,
): string[] {
  if (actual.length !== labels.length || actual.some(({ length }) => length !== 1)) {
    return [`${labels.length} parts fill ${size(actual)} cells`];
  }
  return labels.flatMap((label, at) => {
    const content = scaled(row, cellAt(actual, at, 0));
    const problem = difference(content, named(expected, label), row.match, label);
    return problem === undefined ? [] : [`part "${label}" of ${labels.length}: ${problem}`];
  });
}

function scaled({ resultTimes = 1 }: Row, content: Content | undefined): Content | undefined {
  return typeof content === "number" && resultTimes !== 1 ? content * resultTimes : content;
}
