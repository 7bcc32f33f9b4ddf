import { expectAtLeast, expectPositive, inRow } from "../checks";
import { BadInput, NoAnswer } from "../problem";
import { sameTo } from "../statistics/compare";
import { criticalValue } from "../statistics/distributions";

/** A set taken to failure, or with a known reserve. */
export interface CurveSet {
  readonly load: number;
  readonly reps: number;
  readonly reserve: number;
  /** The row it stands on, for messages; its place in the list unless given. */
  readonly row?: number;
}

/** A lifter's own load-repetition curve, load = M / (1 + (t − 1)/c), with intervals. */
export interface CurveFit {
  readonly sets: number;
  /** M, the athlete's one-repetition maximum. */
  readonly oneRepMax: number;
  readonly oneRepMaxLow: number;
  readonly oneRepMaxHigh: number;
  /** c, which every function that takes an equation takes in place of a published name. */
  readonly constant: number;
  readonly constantLow: number;
  readonly constantHigh: number;
  /** 1 + c/4: the reps this athlete gets at 80% of the maximum. */
  readonly repsAt80: number;
  /** Spread of the reps about the curve. */
  readonly residualSd: number;
  /** The share of the reps' variance that the curve explains. */
  readonly rSquared: number;
}

const LEAST_SETS = 3;
const MOST_REPS = 30;
/** All calls of a lifter may be off alike, and no set shows it: the variance of that, in reps². */
const SHARED_BIAS = 0.25;

/**
 * Fits a lifter's own curve to their sets: reps to failure on 1/load.
 *
 * The load is exact and the reps are the outcome, so the curve is turned round: t = 1 − c + c M / load is a straight
 * line in 1/load, and ordinary least squares fits it. c is one less its intercept, and the maximum is a ratio, slope
 * over c; Fieller's interval for it is the set of maxima that the line does not contradict (Fieller 1954, J R Stat Soc
 * B 16:175-185). Reserves that were called share a bias that the line cannot show, so it widens the intervals.
 *
 * @param sets - Sets taken near failure, 3 or more with 2 different loads.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The curve's constant and the maximum, with intervals.
 * @throws BadInput where a set cannot be. NoAnswer where there are too few, or they are too alike.
 */
export function fitCurve(sets: readonly CurveSet[], confidence = 0.95): CurveFit {
  const points = sets.map((set, i) => inRow(`row ${set.row ?? i + 1}`, () => pointOf(set)));
  requireEnough(sets);
  const n = points.length;
  const { slope, intercept, meanX, squaresX, squaresT, residual } = lineOf(points);
  const constant = 1 - intercept;
  if (!(slope > 0 && constant > 0)) {
    throw new NoAnswer("load does not fall as the reps rise, so no curve fits");
  }

  const variance = residual / (n - 2);
  const called = sets.some(({ reserve }) => reserve > 0);
  const varianceC = variance * (1 / n + meanX ** 2 / squaresX) + (called ? SHARED_BIAS : 0);
  const varianceSlope = variance / squaresX;
  const covariance = (-variance * meanX) / squaresX;
  const q = criticalValue(confidence, n - 2);
  const reach = q * Math.sqrt(varianceC);
  // The maxima M with (c M − slope)² within q² of its variance: a parabola in M, and its two roots.
  const a = constant ** 2 - q ** 2 * varianceC;
  const b = slope * constant + q ** 2 * covariance;
  const d = slope ** 2 - q ** 2 * varianceSlope;
  if (!(a > 0 && d > 0)) {
    throw new NoAnswer("the sets are too alike: add heavier or lighter ones");
  }
  const root = Math.sqrt(Math.max(0, b ** 2 - a * d));
  const oneRepMax = slope / constant;
  return {
    sets: n,
    oneRepMax,
    // On an exact curve the two ends are the maximum itself, but for rounding.
    oneRepMaxLow: Math.min(oneRepMax, (b - root) / a),
    oneRepMaxHigh: Math.max(oneRepMax, (b + root) / a),
    constant,
    constantLow: constant - reach,
    constantHigh: constant + reach,
    repsAt80: 1 + constant / 4,
    residualSd: Math.sqrt(variance),
    rSquared: 1 - residual / squaresT,
  };
}

/** A set as the line sees it. */
interface Point {
  /** 1 / load. */
  readonly x: number;
  /** Reps to failure. */
  readonly t: number;
}

function pointOf({ load, reps, reserve }: CurveSet): Point {
  expectPositive("load", load);
  expectAtLeast("reps", reps, 1);
  expectAtLeast("reserve", reserve, 0);
  const t = reps + reserve;
  if (t > MOST_REPS) {
    throw new BadInput(`reps plus reserve is ${t}; expected at most ${MOST_REPS} for a curve`);
  }
  return { x: 1 / load, t };
}

function requireEnough(sets: readonly CurveSet[]): void {
  const [first] = sets;
  if (!first || sets.length < LEAST_SETS) {
    throw new NoAnswer(`a curve takes at least ${LEAST_SETS} sets; found ${sets.length}`);
  }
  if (sets.every(({ load }) => sameTo(load, first.load))) {
    throw new NoAnswer("every set has the same load; a curve takes at least 2 different ones");
  }
}

/** The least-squares line of t on x, and what it leaves. */
function lineOf(points: readonly Point[]) {
  const n = points.length;
  const meanX = points.reduce((sum, { x }) => sum + x, 0) / n;
  const meanT = points.reduce((sum, { t }) => sum + t, 0) / n;
  const products = (f: (dx: number, dt: number) => number) =>
    points.reduce((sum, { x, t }) => sum + f(x - meanX, t - meanT), 0);
  const squaresX = products((dx) => dx * dx);
  const squaresT = products((_, dt) => dt * dt);
  const slope = products((dx, dt) => dx * dt) / squaresX;
  const residual = products((dx, dt) => (dt - slope * dx) ** 2);
  return { slope, intercept: meanT - slope * meanX, meanX, squaresX, squaresT, residual };
}
