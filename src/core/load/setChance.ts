import { expectAtLeast, expectPositive } from "../checks";
import { normalCdf, normalDensity } from "../statistics/normal";
import { checkReach, type Equation } from "../strength/equations";

/** How well the maximum and the lifter's curve are known. */
export interface SetChanceOptions {
  readonly equation: Equation;
  /** Standard deviation of ln 1RM; 0.03 unless given, as for a maximum tested of late. */
  readonly maxSd?: number;
  /** Standard deviation of ln k, the lifter's curve factor; the equation's usual one unless given, 0 for none. */
  readonly curveSd?: number;
}

const USUAL_MAX_SD = 0.03;
/** Standard deviations past which nothing is left of a normal distribution: 1e-19. */
const FAR = 9;
/** Steps of Simpson's rule on each smooth piece. */
const STEPS = 400;

/**
 * The chance of making a planned set: that the load is no more than this lifter can lift for so many reps today.
 *
 * Neither their maximum nor their curve is known exactly. With ln k the curve factor, a normal number z times its
 * standard deviation, the lifter lifts 1RM × f(1 + (reps − 1)/k); the chance is that of a normal ln 1RM, averaged
 * over z. Of z only the stretch between "surely not" and "surely" needs working out, and it is cut where the equation
 * has its corner, at two reps, so that Simpson's rule sees smooth pieces only.
 *
 * Source: our own, from the equation and the two standard deviations.
 *
 * @param load - The load, in kilograms or pounds, above 0.
 * @param reps - Reps planned, from 1 to the equation's cap.
 * @param oneRepMax - The one-repetition maximum in the load's unit, above 0.
 * @returns The chance, from 0 to 1.
 * @throws BadInput where an argument is out of its range.
 */
export function setChance(
  load: number,
  reps: number,
  oneRepMax: number,
  { equation, maxSd = USUAL_MAX_SD, curveSd = equation.curveSd }: SetChanceOptions,
): number {
  expectPositive("load", load);
  expectPositive("the one-rep max", oneRepMax);
  expectPositive("the standard deviation of the maximum", maxSd);
  expectAtLeast("the standard deviation of the curve", curveSd, 0);
  checkReach(equation, reps);

  const chanceFor = (t: number) => {
    const fraction = Math.max(0, equation.fraction(t));
    return normalCdf(Math.log((oneRepMax * fraction) / load) / maxSd);
  };
  if (reps === 1 || curveSd === 0) return chanceFor(reps);
  const chanceAt = (z: number) => chanceFor(1 + (reps - 1) * Math.exp(-curveSd * z));

  /** The z at which the lifter gets just `reps` with this fraction of their maximum. */
  const placeOf = (fraction: number) => {
    const t = equation.repsAt(Math.min(1, fraction));
    // Some curves never fall so low.
    return Number.isNaN(t) ? -FAR : inside(Math.log((reps - 1) / (t - 1)) / curveSd);
  };
  const share = load / oneRepMax;
  const surelyNot = placeOf(share * Math.exp(-FAR * maxSd));
  const surely = placeOf(share * Math.exp(FAR * maxSd));
  const corner = Math.min(surely, Math.max(surelyNot, Math.log(reps - 1) / curveSd));
  const part = (from: number, to: number) =>
    simpson((z) => normalDensity(z) * chanceAt(z), from, to);
  const chance =
    part(surelyNot, corner) + part(corner, surely) + chanceAt(surely) * normalCdf(-surely);
  return Math.min(1, chance);
}

const inside = (z: number) => Math.min(FAR, Math.max(-FAR, z));

/** The integral of a smooth function (Simpson's composite rule). */
function simpson(f: (x: number) => number, from: number, to: number): number {
  if (from === to) return 0;
  const step = (to - from) / STEPS;
  let sum = f(from) + f(to);
  for (let i = 1; i < STEPS; i++) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * step);
  return (sum * step) / 3;
}
