import fc from "fast-check";
import type { CatalogueFunction, Parameter } from "../../src/functions/catalogue";
import { wordsOf } from "./catalogue";

/** How the data of a call lie: each argument a single cell, or a column with or without its heading. */
export type Layout = "single" | "column" | "headed column";
export const layouts: readonly Layout[] = ["single", "column", "headed column"];

export const ROWS = 8;

/** The numbers a coach might have in a cell, by the argument's name. */
const BETWEEN: Readonly<Record<string, readonly [low: number, high: number]>> = {
  load: [100, 140],
  plannedLoad: [60, 180],
  loads: [300, 700],
  oneRepMax: [100, 220],
  bodyMass: [60, 95],
  reps: [2, 8],
  plannedReps: [2, 8],
  targetReps: [2, 8],
  reserve: [0, 4],
  plannedReserve: [0, 4],
  targetReserve: [0, 4],
  sets: [1, 4],
  rpe: [6, 9],
  minutes: [30, 90],
  weeks: [3, 6],
  week: [1, 3],
  from: [3, 4],
  to: [0, 1],
  repAtCall: [4, 7],
  calledReserve: [0, 4],
  repsToFailure: [8, 13],
  before: [60, 140],
  after: [65, 150],
  scores: [40, 60],
  trials: [40, 60],
  low: [1, 2],
  high: [4, 6],
};

/** Those that are fractions. */
const FRACTION = /^(confidence|alpha|power|correlation|dropout|fraction|curveSd|maxSd)$/;

/** What separates one lifter, lift or group from the next. */
const LABEL = /^(group|lifter|athlete|by|strata|exercise|study|names)$/;

/** One argument alone decides how it lies, whatever the data beside it. */
const SETTING =
  /^(confidence|alpha|power|within|maxReps|reserveBias|reserveSd|curveSd|maxSd|changeDate|reserveError|increment|step|fraction|exponent|margin|smallest|squadSd|newEffect|newStandardError|seed|groups|bar|equation|first|scale|per)$/;

/** The arguments that are tables of their own. */
const TABLES: Readonly<Record<string, readonly unknown[][]>> = {
  blocks: [
    ["Block A", 3, 2, 4, 6, 8, 4, 2],
    ["Block B", 2, 3, 2, 2, 4, 2, 0],
  ],
  plates: [
    [25, ""],
    [20, 4],
    [10, ""],
    [5, ""],
    [2.5, ""],
    [1.25, ""],
    [0.5, ""],
    [0.25, ""],
  ],
  steps: [
    [0.4, 8],
    [0.6, 5],
    [0.8, 2],
  ],
  shares: [
    ["exercise", "legs", "arms"],
    ["Ann", 1, 0],
    ["Ben", 0.5, 1],
  ],
};

/** Arguments with which a coach could mean to call the function: a number per argument, laid out alike. */
export function plausibleArguments(
  { parameters }: CatalogueFunction,
  layout: Layout,
): fc.Arbitrary<unknown[]> {
  return fc.tuple(...parameters.map((parameter) => plausible(parameter, layout, parameters)));
}

function plausible(
  parameter: Parameter,
  layout: Layout,
  beside: readonly Parameter[],
): fc.Arbitrary<unknown> {
  const { name } = parameter;
  const required = requiredArgument(parameter, layout, beside);
  // A list of names or numbers to ask for is left out more often than not, as it is in a sheet.
  const rare = /^(part|at|by|df|week|first|plates|smallest|reps|reserves)$/.test(name);
  return parameter.optional === true
    ? fc.oneof(
        { weight: rare ? 4 : 1, arbitrary: fc.constant(null) },
        { weight: 1, arbitrary: required },
      )
    : required;
}

function requiredArgument(
  parameter: Parameter,
  layout: Layout,
  beside: readonly Parameter[],
): fc.Arbitrary<unknown> {
  const { name } = parameter;
  const words = wordsOf(parameter);
  if (words.length > 0) return fc.constantFrom(...words).map((word) => [[word]]);
  if (name in TABLES) return fc.constant(TABLES[name]);
  if (name === "seed") return fc.integer({ min: 1, max: 99 });
  if (name === "groups") return fc.integer({ min: 2, max: 3 });
  if (name === "first") return fc.constant("Ben");
  if (SETTING.test(name) || (name === "typicalError" && isSquad(beside)))
    return oneCell(name).map((cell) => [[cell]]);
  const wide = name === "trials" || (isBlock(beside) && /^(before|after)$/.test(name));
  if (wide) return block(name, layout);
  if (layout === "single") {
    return LABEL.test(name) ? fc.constant([["Ann"]]) : oneCell(name).map((cell) => [[cell]]);
  }
  return columnOf(name).map((cells) => [
    ...(layout === "headed column" ? [[name]] : []),
    ...cells.map((cell) => [cell]),
  ]);
}

/** A test of a whole squad has one typical error, and a scale. */
const isSquad = (parameters: readonly Parameter[]) =>
  parameters.some(({ name }) => name === "scale");

/** A table of tests has a column a measure, with headings; it alone has groups and no single part. */
const isBlock = (parameters: readonly Parameter[]) =>
  parameters.some(({ name }) => name === "group") &&
  !parameters.some(({ name }) => name === "part");

function block(name: string, layout: Layout): fc.Arbitrary<unknown> {
  return fc
    .tuple(columnOf(name), columnOf(name))
    .map(([first, second]) => [
      ...(layout === "headed column" ? [["jump", "row"]] : []),
      ...first.map((cell, row) => [cell, second[row]]),
    ]);
}

function columnOf(name: string): fc.Arbitrary<unknown[]> {
  if (name === "date")
    return fc.constant(Array.from({ length: ROWS }, (_row, at) => 46_000 + 3 * at));
  if (LABEL.test(name)) {
    return fc.constant(Array.from({ length: ROWS }, (_row, at) => (at % 2 === 0 ? "Ann" : "Ben")));
  }
  const cells = fc.array(oneCell(name), { minLength: ROWS, maxLength: ROWS });
  // From heavy sets to light ones, so that fewer reps go with more load.
  if (name === "load") return cells.map((loads) => loads.sort((a, b) => b - a));
  if (name === "reps") return cells.map((reps) => reps.sort((a, b) => a - b));
  return cells;
}

function oneCell(name: string): fc.Arbitrary<number> {
  if (name === "date") return fc.constant(46_000);
  if (name === "changeDate") return fc.constant(46_010);
  const between = BETWEEN[name];
  if (between) return fc.integer({ min: between[0], max: between[1] });
  if (/^(confidence|power)$/.test(name)) return fc.constantFrom(0.5, 0.8, 0.9, 0.95);
  if (FRACTION.test(name)) return fc.constantFrom(0.05, 0.1, 0.2);
  if (/^n[AB]?$/.test(name)) return fc.integer({ min: 5, max: 40 });
  if (/^df$/.test(name)) return fc.integer({ min: 4, max: 40 });
  if (/^responders/.test(name)) return fc.integer({ min: 1, max: 5 });
  if (/^(sd|typicalError|squadSd)/.test(name)) return fc.double({ min: 2, max: 6, noNaN: true });
  if (/^(increment|step)$/.test(name)) return fc.constantFrom(0.5, 1, 2.5);
  if (name === "bar") return fc.constantFrom(15, 20);
  return fc.integer({ min: 1, max: 9 });
}
