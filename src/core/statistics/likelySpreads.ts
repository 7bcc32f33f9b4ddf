import { expectPositive } from "../checks";
import { BadInput } from "../problem";
import { zip } from "../zip";
import { DEPTH, trapezoid, type Place } from "./trapezoid";

/** Several measured values, each with an error of its own, whose true values have a common middle. */
export interface SpreadInputs {
  readonly values: readonly number[];
  /** The variance of each value's error, in units of sigma². */
  readonly errorVariances: readonly number[];
  /** The standard deviation of an error whose variance above is 1. */
  readonly sigma: number;
  /** The degrees of freedom behind `sigma`, where it is an estimate; where not given, it is known. */
  readonly df?: number | undefined;
  /** How far true values may lie from their middle: the standard deviation of omega's half-normal prior. */
  readonly scale: number;
}

/** One pair of spreads that may be the true ones, with what would follow if they were. */
export interface LikelySpread {
  /** How likely this pair is; the weights sum to 1. */
  readonly weight: number;
  /** The standard deviation of an error whose variance is given as 1. */
  readonly sigma: number;
  /** The standard deviation of the true values about their middle. */
  readonly omega: number;
  readonly middle: number;
  readonly middleVariance: number;
}

/**
 * The pairs of spreads that may be behind some values, close enough together that a sum over them is the
 * integral over the posterior density of both. The model stands at `integratedEffects`.
 *
 * Everything is measured from the most precise value and in units of its error, so that no unit of the
 * sheet's is too small or too large.
 */
export function likelySpreads(inputs: SpreadInputs): LikelySpread[] {
  check(inputs);
  const [origin, least] = zip(inputs.values, inputs.errorVariances).reduce((best, one) =>
    one[1] < best[1] ? one : best,
  );
  const unit = inputs.sigma * Math.sqrt(least);
  const inUnits: Standardized = {
    values: inputs.values.map((value) => (value - origin) / unit),
    variances: inputs.errorVariances.map((c) => c / least),
    scale: inputs.scale / unit,
  };
  const { df = Infinity } = inputs;
  const inSheetUnits = (place: SpreadPlace, weight: number): LikelySpread => ({
    weight,
    sigma: place.sigma * inputs.sigma,
    omega: place.omega * unit,
    middle: origin + place.middle * unit,
    middleVariance: place.middleVariance * unit * unit,
  });
  return df > AS_GOOD_AS_KNOWN
    ? overOmega(inUnits, inSheetUnits)
    : overBoth(inUnits, df, inSheetUnits);
}

/** From here on a sigma that is estimated and one that is known give the same to more digits than a sheet shows. */
const AS_GOOD_AS_KNOWN = 1e10;

/** The values, the variances of their errors (the least is 1) and the scale of the prior, free of units. */
interface Standardized {
  readonly values: readonly number[];
  readonly variances: readonly number[];
  readonly scale: number;
}

/** A pair of spreads, and how likely the values are under it. */
interface SpreadPlace extends Place, Omit<LikelySpread, "weight"> {}

/** What a place with its weight is to the caller. */
type Finish = (place: SpreadPlace, weight: number) => LikelySpread;

/** Sigma known: omega alone is integrated. */
function overOmega(inUnits: Standardized, finish: Finish): LikelySpread[] {
  const { places, shares } = omegaSum(inUnits, 1);
  return zip(places, shares).map(([place, share]) => finish(place, share));
}

/** Corners of the sum, unlikely in both spreads, that no digit of an answer depends on. */
const NEGLIGIBLE = 1e-15;

/** Sigma estimated: u = ln(sigma / s) is integrated around omega, with the density of its chi-square. */
function overBoth(inUnits: Standardized, df: number, finish: Finish): LikelySpread[] {
  const { values } = inUnits;
  const outer = trapezoid(
    (u) => {
      const inner = omegaSum(inUnits, Math.exp(u));
      const log = inner.logIntegral - df * (u + Math.expm1(-2 * u) / 2);
      return { at: u, log, inner };
    },
    {
      step: Math.min(0.3, 1 / Math.sqrt(2 * (df + values.length))),
      bothWays: true,
      // Nothing changes faster with sigma than its own density, so that the finer sum has twice these digits.
      settled: 1e-6,
      reach: sigmaReach(inUnits, df),
    },
  );
  const spreads: LikelySpread[] = [];
  for (const [{ inner }, outerShare] of zip(outer.places, outer.shares)) {
    for (const [place, share] of zip(inner.places, inner.shares)) {
      const weight = outerShare * share;
      if (weight > NEGLIGIBLE) spreads.push(finish(place, weight));
    }
  }
  return spreads;
}

/**
 * How far up ln sigma a second peak may lie, beyond a valley: no farther than the range of the values, and no
 * farther than the chi-square's fall, df (u + (e^-2u - 1) / 2) > df u² / (1 + u), outweighs all that a larger
 * sigma can gain, half the sum of squares.
 */
function sigmaReach({ values, variances }: Standardized, df: number): number {
  const squares = zip(values, variances).reduce(
    (sum, [value, variance]) => sum + value ** 2 / variance,
    0,
  );
  const most = (squares / 2 + DEPTH) / df;
  const outweighed = (most + Math.sqrt(most * (most + 4))) / 2;
  return Math.min(outweighed, Math.log(Math.max(1, range(values))));
}

/**
 * The sum over omega at one sigma. omega = a sinh x in even steps of x: even about 0, where much happens, and
 * with steps that grow far out. Where the prior is narrower than the errors, `a` is its scale, or the whole
 * of it would fall between two steps.
 */
function omegaSum({ values, variances, scale }: Standardized, sigma: number) {
  const a = Math.min(sigma, scale);
  return trapezoid(
    (x): SpreadPlace => {
      const omega = a * Math.sinh(x);
      const { log, middle, middleVariance } = likelihood(values, variances, sigma, omega);
      const prior = -((omega / scale) ** 2) / 2;
      const stretch = x === 0 ? Math.log(a / 2) : Math.log(a * Math.cosh(x));
      return { at: x, log: log + prior + stretch, sigma, omega, middle, middleVariance };
    },
    {
      // The middle's own error, an error / √n, is the shortest distance on which anything changes.
      step: Math.min(0.2, 0.5 / Math.sqrt(values.length)),
      bothWays: false,
      // What is known of a value may change faster with omega than omega's density, so that this settles before it.
      settled: 1e-9,
      reach: Math.asinh(range(values) / a),
    },
  );
}

/** How likely the values are under two spreads, with the middle integrated; and where that middle lies. */
function likelihood(
  values: readonly number[],
  variances: readonly number[],
  sigma: number,
  omega: number,
) {
  let precision = 0;
  let sum = 0;
  let logVariances = 0;
  for (let i = 0; i < values.length; i++) {
    const variance = omega * omega + sigma * sigma * variances[i]!;
    precision += 1 / variance;
    sum += values[i]! / variance;
    logVariances += Math.log(variance);
  }
  const middle = sum / precision;
  let squares = 0;
  for (let i = 0; i < values.length; i++) {
    const variance = omega * omega + sigma * sigma * variances[i]!;
    squares += (values[i]! - middle) ** 2 / variance;
  }
  const log = -(logVariances + Math.log(precision) + squares) / 2;
  return { log, middle, middleVariance: 1 / precision };
}

function check({ values, errorVariances, sigma, df, scale }: SpreadInputs): void {
  if (values.length === 0 || values.length !== errorVariances.length) {
    throw new BadInput(
      `there are ${values.length} values and ${errorVariances.length} variances; expected as many, at least 1`,
    );
  }
  errorVariances.forEach((c) => {
    expectPositive("an error variance", c);
  });
  expectPositive("sigma", sigma);
  expectPositive("scale", scale);
  if (df !== undefined) expectPositive("df", df);
}

const smallest = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b));
const largest = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b));
const range = (values: readonly number[]) => largest(values) - smallest(values);
