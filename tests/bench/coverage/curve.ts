import { NoAnswer } from "../../../src/core/problem";
import { fitCurve, type CurveFit, type CurveSet } from "../../../src/core/strength/fitCurve";
import { ownCurve } from "../../../src/core/strength/equations";
import type { Draws } from "./draws";
import type { Scenario } from "./scenario";

const MAXIMUM = 150;

/** How the reps of a set are written down. */
type Count = (reps: number, draws: Draws, bias: number) => CurveSet;

/** Reps of a set to failure; `load` is filled in by who asks. */
const toFailure =
  (whole: (reps: number) => number): Count =>
  (reps) => ({ load: 0, reps: Math.max(1, whole(reps)), reserve: 0 });

/** Stops short of failure and calls what is left, off by a rep and by a bias that all calls share. */
const called: Count = (reps, draws, bias) => {
  const done = Math.max(1, Math.floor(reps) - draws.whole(1, 3));
  const reserve = Math.max(0, Math.round(reps - done + bias + draws.normal()));
  return { load: 0, reps: done, reserve };
};

/** A fit of one athlete's sets, the loads for these reps by their own curve to 2.5; none where it is refused. */
function fitOf(draws: Draws, reps: readonly number[], count: Count) {
  const constant = 30 * Math.exp(draws.normal(0, 0.25));
  const curve = ownCurve(constant);
  const bias = draws.normal(0, 0.5);
  const sets = reps.map((planned): CurveSet => {
    const load = Math.round((MAXIMUM * curve.fraction(planned)) / 2.5) * 2.5;
    return { ...count(curve.repsAt(load / MAXIMUM), draws, bias), load };
  });
  try {
    return { fit: fitCurve(sets), constant };
  } catch (error) {
    if (error instanceof NoAnswer) return undefined;
    throw error;
  }
}

function held(what: "maximum" | "constant", reps: readonly number[], count: Count) {
  return (draws: Draws): boolean | boolean[] => {
    const found = fitOf(draws, reps, count);
    if (!found) return [];
    const [truth, low, high] = endsOf(found.fit, found.constant, what);
    return low <= truth && truth <= high;
  };
}

const endsOf = (
  fit: CurveFit,
  constant: number,
  what: "maximum" | "constant",
): [truth: number, low: number, high: number] =>
  what === "maximum"
    ? [MAXIMUM, fit.oneRepMaxLow, fit.oneRepMaxHigh]
    : [constant, fit.constantLow, fit.constantHigh];

const wide = [2, 4, 6, 9, 12, 15];
const scenario = (
  what: "maximum" | "constant",
  truth: string,
  kind: Scenario["case"],
  band: Scenario["band"],
  reps: readonly number[],
  count: Count,
): Scenario => ({
  function: "FITCURVE",
  event: `interval holds the ${what}`,
  truth,
  case: kind,
  promised: "95%",
  band,
  run: held(what, reps, count),
});

export const curveScenarios: readonly Scenario[] = [
  scenario(
    "maximum",
    "6 sets of 2 to 15 reps to failure",
    "good",
    [0.93, 1],
    wide,
    toFailure(Math.round),
  ),
  scenario(
    "constant",
    "6 sets of 2 to 15 reps to failure",
    "good",
    [0.93, 1],
    wide,
    toFailure(Math.round),
  ),
  scenario("maximum", "6 sets of 2 to 15 reps, called", "good", [0.93, 1], wide, called),
  scenario("constant", "6 sets of 2 to 15 reps, called", "good", [0.93, 1], wide, called),
  scenario(
    "maximum",
    "6 called sets of 5 to 10 reps, where it answers",
    "bad",
    [0.85, 1],
    [5, 6, 7, 8, 9, 10],
    called,
  ),
  scenario(
    "maximum",
    "6 sets to failure, half reps lost",
    "bad",
    [0.3, 1],
    wide,
    toFailure(Math.floor),
  ),
];
