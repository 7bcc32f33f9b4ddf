import { NoAnswer } from "../problem";
import { normalCdf, normalDensity, normalQuantile } from "./normal";

/** One of the normal distributions a mixture is made of. */
export interface MixtureComponent {
  /** The weights of a mixture sum to 1. */
  readonly weight: number;
  readonly mean: number;
  readonly sd: number;
}

/**
 * What is known of a value that would be normal if only its spread were known for certain: many normal
 * distributions, one for each spread that may be, weighted by how likely that spread is.
 */
export type NormalMixture = readonly MixtureComponent[];

export function mixtureMean(mixture: NormalMixture): number {
  let sum = 0;
  for (const { weight, mean } of mixture) sum += weight * mean;
  return sum;
}

/** The chance of a value above `x`, exact far into the tail. */
export function mixtureAbove(mixture: NormalMixture, x: number): number {
  let sum = 0;
  for (const { weight, mean, sd } of mixture) sum += weight * normalCdf((mean - x) / sd);
  return sum;
}

/** The chance of a value below `x`, exact far into the tail. */
export function mixtureBelow(mixture: NormalMixture, x: number): number {
  let sum = 0;
  for (const { weight, mean, sd } of mixture) sum += weight * normalCdf((x - mean) / sd);
  return sum;
}

function mixtureDensity(mixture: NormalMixture, x: number): number {
  let sum = 0;
  for (const { weight, mean, sd } of mixture) sum += (weight / sd) * normalDensity((x - mean) / sd);
  return sum;
}

/** A last step of Newton's this short, in standard deviations, leaves an error of its square: 1e-13. */
const LAST_STEP = 3e-7;
const MOST_STEPS = 500;

/**
 * The value that the mixture stays below with chance `p`.
 *
 * It lies between the lowest and the highest of the components' own quantiles. Newton's method on the
 * logarithm of the tail finds it in a few steps; where a step would leave the bracket, the bracket is halved.
 */
export function mixtureQuantile(mixture: NormalMixture, p: number): number {
  const z = normalQuantile(p);
  let low = Infinity;
  let high = -Infinity;
  for (const { mean, sd } of mixture) {
    low = Math.min(low, mean + z * sd);
    high = Math.max(high, mean + z * sd);
  }
  const heaviest = mixture.reduce((best, other) => (other.weight > best.weight ? other : best));
  const short = LAST_STEP * heaviest.sd;
  let x = heaviest.mean + z * heaviest.sd;
  const lower = p < 0.5;
  for (let step = 0; step < MOST_STEPS; step++) {
    const tail = lower ? mixtureBelow(mixture, x) : mixtureAbove(mixture, x);
    const excess = lower ? Math.log(tail / p) : Math.log((1 - p) / tail);
    if (excess < 0) low = x;
    else high = x;
    const next = x - (excess * tail) / mixtureDensity(mixture, x);
    if (Math.abs(next - x) <= short) return next;
    // Between two peaks far apart there is no density to step by, and any place between them will do.
    if (high - low <= short) return x;
    x = next > low && next < high ? next : (low + high) / 2;
  }
  throw new NoAnswer("the search for an interval's end did not settle");
}

/** The interval that leaves as much of the mixture below it as above it. */
export function mixtureInterval(
  mixture: NormalMixture,
  confidence: number,
): { low: number; high: number } {
  return {
    low: mixtureQuantile(mixture, (1 - confidence) / 2),
    high: mixtureQuantile(mixture, (1 + confidence) / 2),
  };
}
