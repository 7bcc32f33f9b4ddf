import { BadInput, NoAnswer } from "../problem";

/**
 * A load-repetition equation: what fraction of the one-repetition maximum (1RM) can be lifted t times,
 * t being the reps to failure (reps done plus reps in reserve).
 *
 * Every published equation here is f(1) = 1 by definition (a single taken to failure *is* the maximum), a
 * straight line from 1 at one rep to f(2) at two, and the published curve from two reps on.
 */
export interface Equation {
  /** The fraction of 1RM that can be lifted t times. */
  fraction(t: number): number;
  /** The slope df/dt; at t = 2, where line and curve meet, the published curve's own. */
  slope(t: number): number;
  /** The t at which the fraction is reached: the inverse of `fraction`, for fractions up to 1. */
  repsAt(fraction: number): number;
  /** The most reps to failure the equation is used for. */
  readonly cap: number;
  /**
   * How far a lifter's own curve usually lies from this one: the standard deviation of ln k, where the lifter gets
   * 1 + (t − 1) k reps for the equation's t. Chosen by simulation (docs/accuracy.md).
   */
  readonly curveSd: number;
}

/** A published curve, as printed: its value, its slope and its inverse, all for t of 2 and more. */
interface Curve {
  at(t: number): number;
  slope(t: number): number;
  inverse(fraction: number): number;
}

/** Straight lines run into the floor: past 15 reps they promise loads nobody sees. */
const LINE_CAP = 15;
const CURVE_CAP = 30;

/** Lifters differ by a quarter or so in the reps they get from one fraction of their maximum. */
const PUBLISHED_CURVE_SD = 0.25;
/** A curve fitted to the lifter's own sets is nearer, but not known exactly. */
const OWN_CURVE_SD = 0.1;

/** f = 1 / (1 + k t). */
function hyperbola(k: number): Curve {
  return {
    at: (t) => 1 / (1 + k * t),
    slope: (t) => -k / (1 + k * t) ** 2,
    inverse: (fraction) => (1 / fraction - 1) / k,
  };
}

/** f = (a − b t) / c. */
function line(a: number, b: number, c: number): Curve {
  return {
    at: (t) => (a - b * t) / c,
    slope: () => -b / c,
    inverse: (fraction) => (a - c * fraction) / b,
  };
}

/** f = (a + b e^(−k t)) / 100. */
function decay(a: number, b: number, k: number): Curve {
  return {
    at: (t) => (a + b * Math.exp(-k * t)) / 100,
    slope: (t) => (-k * b * Math.exp(-k * t)) / 100,
    inverse: (fraction) => Math.log(b / (100 * fraction - a)) / k,
  };
}

/** f = t^−p. */
function power(p: number): Curve {
  return {
    at: (t) => t ** -p,
    slope: (t) => -p * t ** (-p - 1),
    inverse: (fraction) => fraction ** (-1 / p),
  };
}

/** A published curve made whole: 1 at one rep, a straight line to the curve's own value at two. */
function published(curve: Curve, cap: number): Equation {
  const atTwo = curve.at(2);
  return {
    cap,
    curveSd: PUBLISHED_CURVE_SD,
    fraction: (t) => (t >= 2 ? curve.at(t) : 1 - (1 - atTwo) * (t - 1)),
    slope: (t) => (t >= 2 ? curve.slope(t) : atTwo - 1),
    repsAt: (fraction) =>
      fraction <= atTwo ? curve.inverse(fraction) : 1 + (1 - fraction) / (1 - atTwo),
  };
}

/**
 * The seven published equations, as compared by LeSuer, McCormick, Mayhew, Wasserstein and Arnold 1997
 * (J Strength Cond Res 11:211-213).
 */
export const equations = {
  /** Epley 1985: 1 / (1 + t/30). */
  epley: published(hyperbola(1 / 30), CURVE_CAP),
  /** Brzycki 1993: (37 − t) / 36. */
  brzycki: published(line(37, 1, 36), LINE_CAP),
  /** Lander 1985: (101.3 − 2.67123 t) / 100. */
  lander: published(line(101.3, 2.67123, 100), LINE_CAP),
  /** Lombardi 1989: t^−0.10. */
  lombardi: published(power(0.1), CURVE_CAP),
  /** Mayhew, Ball, Arnold and Bowen 1992: (52.2 + 41.9 e^(−0.055 t)) / 100. */
  mayhew: published(decay(52.2, 41.9, 0.055), CURVE_CAP),
  /** O'Conner, Simmons and O'Shea 1989: 1 / (1 + 0.025 t). */
  oconner: published(hyperbola(0.025), CURVE_CAP),
  /** Wathan 1994: (48.8 + 53.8 e^(−0.075 t)) / 100. */
  wathan: published(decay(48.8, 53.8, 0.075), CURVE_CAP),
} as const satisfies Record<string, Equation>;

/** The name of a published equation. */
export type EquationName = keyof typeof equations;

/**
 * A lifter's own curve with constant c: f = 1 / (1 + (t − 1) / c), from one rep on. The constant is the
 * number of reps past the first at which half of the maximum is left; `fitCurve` finds it from their sets.
 *
 * Source: our own form: a hyperbola through 1 at one rep.
 *
 * @param constant - What `fitCurve` finds, in reps, above 0.
 * @returns The equation, up to 30 reps to failure.
 */
export function ownCurve(constant: number): Equation {
  return {
    cap: CURVE_CAP,
    curveSd: OWN_CURVE_SD,
    fraction: (t) => 1 / (1 + (t - 1) / constant),
    slope: (t) => -1 / constant / (1 + (t - 1) / constant) ** 2,
    repsAt: (fraction) => 1 + constant * (1 / fraction - 1),
  };
}

/**
 * The fraction of 1RM that can be lifted t times, refusing a t the equation is not made for.
 *
 * Source: the equation's, as named beside it.
 *
 * @param equation - One of `equations`, or a lifter's `ownCurve`.
 * @param t - Reps to failure.
 * @returns The fraction of the maximum, above 0 and at most 1.
 * @throws BadInput where `t` is below 1 or above the equation's cap.
 */
export function fractionAt(equation: Equation, t: number): number {
  checkReach(equation, t);
  return equation.fraction(t);
}

/** Refuses reps to failure below one, or past the equation's cap. */
export function checkReach(equation: Equation, t: number): void {
  if (t < 1) {
    throw new BadInput(`reps plus reserve is ${shown(t)}; expected at least 1`);
  }
  if (t > equation.cap) {
    throw new BadInput(
      `reps plus reserve is ${shown(t)}; expected at most ${equation.cap} for this equation`,
    );
  }
}

/**
 * The reps to failure at a fraction of 1RM; a fraction too light for the equation has no answer.
 *
 * Source: the equation's, as named beside it.
 *
 * @param equation - One of `equations`, or a lifter's `ownCurve`.
 * @param fraction - A fraction of the maximum, above 0 and at most 1.
 * @returns Reps to failure, not rounded.
 * @throws NoAnswer where the load is lighter than the equation reaches.
 */
export function repsToFailureAt(equation: Equation, fraction: number): number {
  const t = equation.repsAt(fraction);
  if (!(t <= equation.cap * (1 + 1e-9))) {
    throw new NoAnswer(
      `the load is lighter than this equation reaches (${equation.cap} reps to failure)`,
    );
  }
  return t;
}

const shown = (value: number) => String(Number(value.toPrecision(6)));
