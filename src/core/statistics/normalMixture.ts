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

/** The chance beyond `x`, below or above it, with the height of the density there and its slope. */
function tailAt(mixture: NormalMixture, x: number, side: 1 | -1) {
  let tail = 0;
  let density = 0;
  let slope = 0;
  for (const { weight, mean, sd } of mixture) {
    const z = (x - mean) / sd;
    const height = (weight / sd) * normalDensity(z);
    tail += weight * normalCdf(side * z);
    density += height;
    slope -= (height * z) / sd;
  }
  return { tail, density, slope };
}

/** A last step this short, in standard deviations of the narrowest component, leaves an error of its cube: 1e-12. */
const LAST_STEP = 1e-4;
/** No step or bracket need be shorter than this, in standard deviations of the whole. */
const SHORTEST = 1e-12;
/** Where the slope changes more than this, Halley's step is no better than Newton's. */
const MOST_BEND = 0.5;
const MOST_STEPS = 500;

/**
 * The value that the mixture stays below with chance `p`.
 *
 * It lies between the lowest and the highest of the components' own quantiles. Halley's method on the logarithm
 * of the tail finds it in two or three steps from where one normal distribution of the same mean and spread has
 * it; where a step would leave the bracket, the bracket is halved.
 */
export function mixtureQuantile(mixture: NormalMixture, p: number): number {
  const z = normalQuantile(p);
  let low = Infinity;
  let high = -Infinity;
  let narrowest = Infinity;
  for (const { mean, sd } of mixture) {
    low = Math.min(low, mean + z * sd);
    high = Math.max(high, mean + z * sd);
    narrowest = Math.min(narrowest, sd);
  }
  const { mean, sd } = oneNormal(mixture);
  const short = Math.max(LAST_STEP * narrowest, SHORTEST * sd);
  let x = Math.min(high, Math.max(low, mean + z * sd));
  const side = p < 0.5 ? 1 : -1;
  const wanted = p < 0.5 ? p : 1 - p;
  for (let step = 0; step < MOST_STEPS; step++) {
    const { tail, density, slope } = tailAt(mixture, x, side);
    const excess = side * Math.log(tail / wanted);
    if (excess < 0) low = x;
    else high = x;
    const newton = (excess * tail) / density;
    // How far the logarithm's slope changes over half of Newton's step: no little step is trusted where it is much.
    const bend = (newton * (slope / density - (side * density) / tail)) / 2;
    const next = x - (Math.abs(bend) < MOST_BEND ? newton / (1 - bend) : newton);
    if (Math.abs(next - x) <= short) return next;
    // Between two peaks far apart there is no density to step by, and any place between them will do.
    if (high - low <= SHORTEST * sd) return x;
    x = next > low && next < high ? next : (low + high) / 2;
  }
  throw new NoAnswer("the search for an interval's end did not settle");
}

/** The normal distribution of the mixture's mean and spread. */
function oneNormal(mixture: NormalMixture) {
  const mean = mixtureMean(mixture);
  let variance = 0;
  for (const one of mixture) variance += one.weight * (one.sd ** 2 + (one.mean - mean) ** 2);
  return { mean, sd: Math.sqrt(variance) };
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
