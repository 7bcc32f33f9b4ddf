import { NoAnswer } from "../problem";

/** Where a function is lowest, and how low. */
export interface Minimum {
  readonly at: number;
  readonly value: number;
}

/** The golden section, (3 − √5) / 2: the share of an interval at which to look next. */
const GOLDEN = (3 - Math.sqrt(5)) / 2;

/** Values nearer than this, relative, tell nothing of the place of a minimum: the root of machine precision. */
const ROOT_PRECISION = Math.sqrt(Number.EPSILON);

const MOST_STEPS = 500;

/**
 * A minimum of f between two bounds, by golden sections and parabolas (Brent 1973, Algorithms for
 * Minimization without Derivatives, chapter 5).
 *
 * `tolerance` is the wanted closeness of the place. Function values cannot tell a minimum's place better
 * than a relative 1e-8 or so; where more is needed, find the root of the slope (`findRoot`). The bounds
 * themselves are looked at too, so that a minimum on the bound (a variance of zero) comes back exactly.
 * Where f has several valleys this finds one of them: scan first, and search each valley.
 */
export function minimiseBounded(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
): Minimum {
  let a = low;
  let b = high;
  let best = look(f, a + GOLDEN * (b - a));
  let second = best;
  let third = best;
  let step = 0;
  let stepBefore = 0;

  for (let count = 0; count < MOST_STEPS; count++) {
    const middle = (a + b) / 2;
    const least = ROOT_PRECISION * Math.abs(best.at) + tolerance / 3;
    if (Math.abs(best.at - middle) <= 2 * least - (b - a) / 2) {
      return [look(f, low), look(f, high)].reduce((x, y) => (y.value < x.value ? y : x), best);
    }

    const leap = Math.abs(stepBefore) > least ? parabolaStep(best, second, third) : undefined;
    const usable =
      leap !== undefined &&
      Math.abs(leap) < Math.abs(stepBefore) / 2 &&
      best.at + leap > a &&
      best.at + leap < b;
    if (usable) {
      stepBefore = step;
      const next = best.at + leap;
      const besideBound = next - a < 2 * least || b - next < 2 * least;
      step = besideBound ? (best.at < middle ? least : -least) : leap;
    } else {
      stepBefore = best.at < middle ? b - best.at : a - best.at;
      step = GOLDEN * stepBefore;
    }

    const next = look(f, best.at + (Math.abs(step) >= least ? step : step > 0 ? least : -least));
    if (next.value <= best.value) {
      if (next.at < best.at) b = best.at;
      else a = best.at;
      [best, second, third] = [next, best, second];
    } else {
      if (next.at < best.at) a = next.at;
      else b = next.at;
      if (next.value <= second.value || second.at === best.at) {
        [second, third] = [next, second];
      } else if (next.value <= third.value || third.at === best.at || third.at === second.at) {
        third = next;
      }
    }
  }
  throw new NoAnswer("the search for a minimum did not settle");
}

function look(f: (x: number) => number, at: number): Minimum {
  const value = f(at);
  if (Number.isNaN(value)) throw new NoAnswer("the search for a minimum met a value that is none");
  return { at, value };
}

/** The step from `best` to the lowest point of the parabola through three points, if it has one. */
function parabolaStep(best: Minimum, second: Minimum, third: Minimum): number | undefined {
  const r = (best.at - second.at) * (best.value - third.value);
  const q = (best.at - third.at) * (best.value - second.value);
  const step = ((best.at - second.at) * r - (best.at - third.at) * q) / (2 * (q - r));
  return Number.isFinite(step) ? step : undefined;
}
