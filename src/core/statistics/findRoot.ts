import { NoAnswer } from "../problem";

/** Tight enough that the caller's own arithmetic, not this search, limits the precision. */
const TOLERANCE = 1e-14;
const MAX_STEPS = 200;

/**
 * The x between `low` and `high` at which `f` is 0. The two ends must lie on opposite sides of it.
 *
 * Inverse quadratic steps where they are safe, halving where they are not: as fast as Newton's method on
 * smooth functions, and it cannot run away.
 *
 * Source: Chandrupatla 1997, Adv Eng Softw 28:145-149.
 */
export function findRoot(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) throw new NoAnswer(`no solution lies between ${low} and ${high}`);
  let share = 0.5;
  for (let step = 0; step < MAX_STEPS; step++) {
    const x = a + share * (b - a);
    const fx = f(x);
    // a becomes the newest point, b the end across the root, c the point left behind.
    let [c, fc] = [b, fb];
    if (fx > 0 === fa > 0) [c, fc] = [a, fa];
    else [b, fb] = [a, fa];
    [a, fa] = [x, fx];

    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const reach = (TOLERANCE * Math.max(1, Math.abs(best))) / Math.abs(b - a);
    if (fa === 0 || reach > 0.5) return best;

    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    const smooth = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
    share = smooth
      ? (fa / (fb - fa)) * (fc / (fb - fc)) +
        ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
      : 0.5;
    share = Math.min(1 - reach, Math.max(reach, share));
  }
  throw new NoAnswer(`the search between ${low} and ${high} did not settle`);
}

/**
 * As `findRoot`, from a first guess alone: steps out from it, twice as far each time, until the root is
 * surrounded. `f` must rise throughout.
 */
export function findRootNear(f: (x: number) => number, guess: number): number {
  const start = f(guess);
  if (start === 0) return guess;
  const direction = start < 0 ? 1 : -1;
  let inner = guess;
  for (let step = 0.25; step < 1e6; step *= 2) {
    const outer = guess + direction * step;
    if (f(outer) * direction >= 0) return findRoot(f, inner, outer);
    inner = outer;
  }
  throw new NoAnswer("the search found no solution");
}

/** A step this short, from a point so near, lands on the root to rounding: the error left is its square. */
const SETTLED = 1e-9;
const FEW_STEPS = 6;

/**
 * As `findRootNear`, from a good guess and roughly the slope there: secant steps, which settle in three or
 * four evaluations; the safe search where they do not.
 */
export function refineRoot(f: (x: number) => number, guess: number, slope: number): number {
  let [x, fx, rise] = [guess, f(guess), slope];
  for (let step = 0; step < FEW_STEPS; step++) {
    if (fx === 0) return x;
    const next = x - fx / rise;
    if (!(Math.abs(next - x) <= 1)) break;
    // The first step is as good as the slope that was given, and that may be far off.
    if (step > 0 && Math.abs(next - x) <= SETTLED) return next;
    const fNext = f(next);
    rise = (fNext - fx) / (next - x);
    [x, fx] = [next, fNext];
  }
  return findRootNear(f, guess);
}
