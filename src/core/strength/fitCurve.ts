import { expectAtLeast, expectPositive, inRow } from "../checks";
import { BadInput, NoAnswer } from "../problem";
import { criticalValue } from "../statistics/distributions";

/** A set taken to failure, or with a known reserve. */
export interface CurveSet {
  readonly load: number;
  readonly reps: number;
  readonly reserve: number;
  /** The row it stands on, for messages; its place in the list unless given. */
  readonly row?: number;
}

/** An athlete's own load-repetition curve, load = M / (1 + (t − 1)/c), with intervals. */
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
  readonly residualSd: number;
  /** 1 − the residual sum of squares over that about the mean load. */
  readonly rSquared: number;
}

const LEAST_SETS = 3;
const MOST_REPS = 30;

/**
 * Fits an athlete's own curve to their sets by least squares on load.
 *
 * The curve is 1/load = a + b(t − 1) turned over; that straight line is the start, and Levenberg and
 * Marquardt's steps (Marquardt 1963, J Soc Ind Appl Math 11:431-441) go on from there to the least squares
 * of load itself, in M and k = 1/c. Intervals are symmetric, from the fit's standard errors and Student's t
 * on n − 2 (Bates and Watts 1988, Nonlinear Regression Analysis and Its Applications, chapter 2).
 */
export function fitCurve(sets: readonly CurveSet[], confidence = 0.95): CurveFit {
  const points = sets.map((set, i) => inRow(`row ${set.row ?? i + 1}`, () => pointOf(set)));
  const n = points.length;
  if (n < LEAST_SETS) {
    throw new NoAnswer(`a curve takes at least ${LEAST_SETS} sets; found ${n}`);
  }
  if (points.every(({ x }) => x === points[0]!.x)) {
    throw new NoAnswer(
      "every set has the same reps to failure; a curve takes at least 2 different ones",
    );
  }

  const mean = points.reduce((sum, { load }) => sum + load, 0) / n;
  const aboutMean = points.reduce((sum, { load }) => sum + (load - mean) ** 2, 0);
  const { maximum, bend, squares, information } = leastSquares(points);

  const residualSd = Math.sqrt(squares / (n - 2));
  const constant = 1 / bend;
  const [mm, mb, bb] = information;
  const determinant = mm * bb - mb * mb;
  const reach = criticalValue(confidence, n - 2) * residualSd;
  const maximumReach = reach * Math.sqrt(bb / determinant);
  const constantReach = reach * Math.sqrt(mm / determinant) * constant ** 2;
  return {
    sets: n,
    oneRepMax: maximum,
    oneRepMaxLow: maximum - maximumReach,
    oneRepMaxHigh: maximum + maximumReach,
    constant,
    constantLow: constant - constantReach,
    constantHigh: constant + constantReach,
    repsAt80: 1 + constant / 4,
    residualSd,
    rSquared: 1 - squares / aboutMean,
  };
}

/** A set as the curve sees it: x is the reps to failure past the first. */
interface Point {
  readonly x: number;
  readonly load: number;
}

/** M and k = 1/c: in k the curve stays well behaved where c runs off to infinity. */
interface Curve {
  readonly maximum: number;
  readonly bend: number;
}

/** The cross-products of the two slopes of the curve, by M and k: MM, Mk, kk. */
type Information = readonly [number, number, number];

function pointOf({ load, reps, reserve }: CurveSet): Point {
  expectPositive("load", load);
  expectAtLeast("reps", reps, 1);
  expectAtLeast("reserve", reserve, 0);
  const t = reps + reserve;
  if (t > MOST_REPS) {
    throw new BadInput(`reps plus reserve is ${t}; a curve is fitted up to ${MOST_REPS}`);
  }
  return { x: t - 1, load };
}

const MOST_STEPS = 500;
/** Steps smaller than this, relative, change nothing that matters. */
const SETTLED = 1e-12;
/** A maximum this many times the mean load is none, but a search on its way to infinity. */
const RUNAWAY = 1e4;

/** Levenberg-Marquardt: Gauss-Newton's step, held back more where it overshoots and less where it helps. */
function leastSquares(points: readonly Point[]) {
  const mean = points.reduce((sum, { load }) => sum + load, 0) / points.length;
  let curve = startOf(points, mean);
  let squares = squaresOf(points, curve);
  let damping = 1e-3;
  for (let count = 0; count < MOST_STEPS; count++) {
    const [mm, mk, kk] = informationOf(points, curve);
    const [gradientM, gradientK] = gradientOf(points, curve);
    const heldM = mm * (1 + damping);
    const heldK = kk * (1 + damping);
    const determinant = heldM * heldK - mk * mk;
    const stepM = (heldK * gradientM - mk * gradientK) / determinant;
    const stepK = (heldM * gradientK - mk * gradientM) / determinant;
    const next = { maximum: curve.maximum + stepM, bend: curve.bend + stepK };
    const nextSquares = squaresOf(points, next);
    if (next.maximum > 0 && next.bend > 0 && nextSquares < squares) {
      curve = next;
      squares = nextSquares;
      damping /= 10;
    } else {
      damping *= 10;
    }
    if (!(curve.maximum < RUNAWAY * mean)) break;
    if (Math.abs(stepM) <= SETTLED * curve.maximum && Math.abs(stepK) <= SETTLED * curve.bend) {
      return { ...curve, squares, information: distinct(informationOf(points, curve)) };
    }
  }
  throw new NoAnswer(
    "the sets cannot tell the one-rep max from the constant: add heavier or lighter ones",
  );
}

/** M and k from the straight line of 1/load on x; where that slopes the wrong way, from that of load. */
function startOf(points: readonly Point[], mean: number): Curve {
  const fall = lineOf(points.map(({ x, load }) => [x, load]));
  const reach = Math.max(...points.map(({ x }) => x)) - Math.min(...points.map(({ x }) => x));
  if (!(fall.slope * reach < -1e-9 * mean)) {
    throw new NoAnswer("load does not fall as the reps to failure rise, so no curve fits");
  }
  const turned = lineOf(points.map(({ x, load }) => [x, 1 / load]));
  return turned.slope > 0 && turned.intercept > 0
    ? { maximum: 1 / turned.intercept, bend: turned.slope / turned.intercept }
    : { maximum: fall.intercept, bend: -fall.slope / fall.intercept };
}

function lineOf(pairs: readonly (readonly [number, number])[]) {
  const n = pairs.length;
  const meanX = pairs.reduce((sum, [x]) => sum + x, 0) / n;
  const meanY = pairs.reduce((sum, [, y]) => sum + y, 0) / n;
  const cross = pairs.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0);
  const square = pairs.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  const slope = cross / square;
  return { slope, intercept: meanY - slope * meanX };
}

const loadAt = ({ maximum, bend }: Curve, x: number) => maximum / (1 + bend * x);

/** How the curve's load at x changes with M and with k. */
function slopesAt({ maximum, bend }: Curve, x: number): [number, number] {
  const fraction = 1 / (1 + bend * x);
  return [fraction, -maximum * x * fraction * fraction];
}

const squaresOf = (points: readonly Point[], curve: Curve) =>
  points.reduce((sum, { x, load }) => sum + (load - loadAt(curve, x)) ** 2, 0);

function gradientOf(points: readonly Point[], curve: Curve): [number, number] {
  let m = 0;
  let k = 0;
  for (const { x, load } of points) {
    const residual = load - loadAt(curve, x);
    const [slopeM, slopeK] = slopesAt(curve, x);
    m += slopeM * residual;
    k += slopeK * residual;
  }
  return [m, k];
}

function informationOf(points: readonly Point[], curve: Curve): Information {
  let mm = 0;
  let mk = 0;
  let kk = 0;
  for (const { x } of points) {
    const [slopeM, slopeK] = slopesAt(curve, x);
    mm += slopeM * slopeM;
    mk += slopeM * slopeK;
    kk += slopeK * slopeK;
  }
  return [mm, mk, kk];
}

/** Refuses sets at which both slopes say the same thing, so that M and k can trade places unseen. */
function distinct(information: Information): Information {
  const [mm, mk, kk] = information;
  if (mk * mk > (1 - 1e-10) * mm * kk) {
    throw new NoAnswer("the sets are too alike to tell the one-rep max from the constant");
  }
  return information;
}
