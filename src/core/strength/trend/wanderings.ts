import {
  filterRegression,
  smoothRegression,
  type LevelRegression,
  type LevelVariances,
  type SmoothedRegression,
} from "../../statistics/levelRegression";
import type { NormalMixture } from "../../statistics/normalMixture";

/** One possible pair of wanderings: how likely it is, and how the levels then ran. */
export interface Wandering {
  readonly weight: number;
  readonly levels: SmoothedRegression;
}

/** A difference of levels or a sum: how often each day's ln 1RM is counted. */
export type Contrast = readonly { readonly day: number; readonly times: number }[];

/**
 * The grid: standard deviations of the walk a day and of a day's form, up to 2% and 8%. Places are equally spaced
 * in the square root, so that the small ones that matter stand closer.
 */
const WALKS = { places: 12, most: 0.02, usual: 0.005 };
const FORMS = { places: 10, most: 0.08, usual: 0.03 };
/** Pairs less likely than this, beside the likeliest, change no digit that is shown. */
const NEGLIGIBLE = 1e-9;

/**
 * The ways in which ln 1RM may have run, one for each pair of wanderings.
 *
 * A short log cannot tell how far its level wanders, nor how much form varies from day to day. An interval that
 * took the likeliest pair for the truth would be too narrow, so all pairs of a grid are kept, each weighted by its
 * likelihood and by what is known of lifters (half-normal priors on both standard deviations).
 */
export function wanderings(model: LevelRegression): Wandering[] {
  const fits = GRID.map(({ variances, logPrior }) => {
    const filtered = filterRegression(model, variances);
    return { variances, filtered, logWeight: filtered.logLikelihood + logPrior };
  });
  const highest = fits.reduce((most, { logWeight }) => Math.max(most, logWeight), -Infinity);
  const likely = fits
    .map((fit) => ({ ...fit, weight: Math.exp(fit.logWeight - highest) }))
    .filter(({ weight }) => weight > NEGLIGIBLE);
  const total = likely.reduce((sum, { weight }) => sum + weight, 0);
  return likely.map(({ variances, filtered, weight }) => ({
    weight: weight / total,
    levels: smoothRegression(model, variances, filtered),
  }));
}

/** What is known of a contrast of levels, over all wanderings. */
export function contrastOf(ways: readonly Wandering[], contrast: Contrast): NormalMixture {
  return ways.map(({ weight, levels }) => {
    let mean = 0;
    let variance = 0;
    for (const { day, times } of contrast) {
      mean += times * levels.level(day);
      for (const other of contrast) {
        variance += times * other.times * levels.covariance(day, other.day);
      }
    }
    return { weight, mean, sd: Math.sqrt(variance) };
  });
}

interface GridPoint {
  readonly variances: LevelVariances;
  readonly logPrior: number;
}

/** Half-normal priors; the logarithm of the root is the grid's own spacing. */
const GRID: readonly GridPoint[] = rungs(WALKS).flatMap((walk) =>
  rungs(FORMS).map((form) => ({
    variances: { walk: walk.sd ** 2, noise: form.sd ** 2 },
    logPrior: walk.logPrior + form.logPrior,
  })),
);

function rungs({ places, most, usual }: typeof WALKS): { sd: number; logPrior: number }[] {
  return Array.from({ length: places }, (_, i) => {
    const root = (i + 0.5) / places;
    const sd = most * root ** 2;
    return { sd, logPrior: Math.log(root) - (sd / usual) ** 2 / 2 };
  });
}
