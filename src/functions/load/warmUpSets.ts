import {
  isGiven,
  namesParts,
  readOne,
  readTable,
  required,
  requiredIn,
  setting,
  single,
  table,
} from "../../cells";
import { warmUpSets as warmUp, type WarmUpStep } from "../../core/load/warmUp";
import { liftReport } from "../answer";
import * as quantities from "../quantities";
import { shownNumber } from "../shownNumber";

/**
 * @customenum {string}
 */
export enum WarmUpPart {
  /** All of them in one cell: "40 x 8, 60 x 5, 75 x 3, 90 x 1". */
  summary = "summary",
  /** How many warm-up sets there are. */
  sets = "sets",
  /** Their volume load, reps × load added up. */
  volumeLoad = "volume load",
}

/**
 * The warm-up sets that climb to a work set: a fraction of its load each, rounded, never below the bar. Neither the work set nor anything as heavy is listed.
 *
 * @customfunction WARMUPSETS
 * @param load The load of the work set, above 0; one value, or a range where part is given.
 * @param [bar] The bar's weight, below which no set goes; 0 or omitted for none.
 * @param [increment] {@phrase increment}
 * @param [steps] Two columns, fraction of the work load and reps; 0.4 × 8, 0.6 × 5, 0.75 × 3, 0.9 × 1 if omitted.
 * @param [part] "summary" for all of them in one cell, "sets" or "volume load".
 * @returns A table with headings: load, reps, a row a step that is lighter than the work set.
 * @errors #VALUE! for a load lighter than the bar, or a fraction above 1.
 * @example =SPARE.WARMUPSETS(100, 20, 2.5)
 * @example =SPARE.WARMUPSETS(100, 20, 2.5, , "summary")
 * @source Common practice, no source.
 */
export function warmUpSets(
  load: unknown[][],
  bar?: unknown[][],
  increment?: unknown[][],
  steps?: unknown[][],
  part?: WarmUpPart[][],
): unknown[][] {
  const ladder = readSteps(steps);
  const inputs = {
    load: required(load, quantities.load()),
    bar: setting(bar, quantities.atLeast0("bar", "a bar's weight, or 0 for none"), 0),
    increment: setting(increment, quantities.increment(), 0),
  };
  const setsFor = (values: { load: number; bar: number; increment: number }) =>
    warmUp(values.load, { ...values, ...(ladder === undefined ? {} : { steps: ladder }) });
  if (namesParts(part)) {
    return liftReport(inputs, WarmUpPart, part, (values) => {
      const sets = setsFor(values);
      return {
        summary: sets.map(({ load, reps }) => `${shownNumber(load)} x ${reps}`).join(", "),
        sets: sets.length,
        volumeLoad: sets.reduce((sum, { load, reps }) => sum + load * reps, 0),
      };
    });
  }
  const work = readOne(inputs.load);
  const values = { bar: readOne(inputs.bar)!, increment: readOne(inputs.increment)! };
  if (work === null) return single("");
  return table(
    ["load", "reps"],
    setsFor({ load: work, ...values }).map(({ load, reps }) => [load, reps]),
  );
}

const FRACTION = quantities.above0("fraction", "a fraction of the work load, such as 0.6");
const REPS = quantities.reps();

/** The steps that were given; none where the usual ones will do. */
function readSteps(given: unknown): WarmUpStep[] | undefined {
  if (!isGiven(given)) return undefined;
  const rows = readTable(given, { name: "steps", columns: [FRACTION, REPS] });
  if (rows.length === 0) return undefined;
  return rows.map((row) => ({
    fraction: requiredIn(row, 0, FRACTION),
    reps: requiredIn(row, 1, REPS),
    row: row.row,
  }));
}
