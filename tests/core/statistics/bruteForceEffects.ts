import type { SpreadInputs } from "../../../src/core/statistics/likelySpreads";
import { normalCdf } from "../../../src/core/statistics/normal";

/** How far the sums of `bruteForceEffects` go, and in how many steps (an even number). */
export interface BruteForceGrid {
  readonly mostOmega: number;
  readonly omegaSteps: number;
  /** From and to, of ln(sigma / s). */
  readonly logSigma?: readonly [number, number];
  readonly sigmaSteps?: number;
}

interface Known {
  readonly mean: number;
  readonly sd: number;
}

interface Point {
  readonly log: number;
  /** Its factor in Simpson's rule. */
  readonly share: number;
  readonly effects: readonly Known[];
  readonly next: Known;
}

/**
 * The model of `integratedEffects` by force: Simpson's rule over even grids of omega itself and of ln sigma,
 * the chi-square density as it is written down, the likelihood and the effects by mixed-model matrices (P,
 * R - R P R: Harville 1977, J Am Stat Assoc 72:320-338). Shares no formula and no grid with the code.
 */
export function bruteForceEffects(inputs: SpreadInputs, grid: BruteForceGrid) {
  const { sigma, df, scale } = inputs;
  const points: Point[] = [];
  const omegas = simpson([0, grid.mostOmega], grid.omegaSteps);
  const sigmas =
    df === undefined ? [{ at: 0, share: 1 }] : simpson(grid.logSigma!, grid.sigmaSteps!);
  for (const outer of sigmas) {
    const trueSigma = sigma * Math.exp(outer.at);
    const x = df === undefined ? 0 : df * (sigma / trueSigma) ** 2;
    const chiSquare = df === undefined ? 0 : (df / 2) * Math.log(x) - x / 2;
    for (const inner of omegas) {
      const { log, effects, next } = given(inputs, trueSigma, inner.at);
      const prior = -((inner.at / scale) ** 2) / 2;
      const share = outer.share * inner.share;
      points.push({ log: log + prior + chiSquare, share, effects, next });
    }
  }
  const highest = points.reduce((most, { log }) => Math.max(most, log), -Infinity);
  const weights = points.map(({ log, share }) => share * Math.exp(log - highest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const average = (of: (point: Point) => number) =>
    points.reduce((sum, point, k) => sum + weights[k]! * of(point), 0) / total;
  const below = (x: number, { mean, sd }: Known) => normalCdf((x - mean) / sd);
  return {
    effectMean: (i: number) => average(({ effects }) => effects[i]!.mean),
    effectBelow: (i: number, x: number) => average(({ effects }) => below(x, effects[i]!)),
    nextMean: () => average(({ next }) => next.mean),
    nextBelow: (x: number) => average(({ next }) => below(x, next)),
  };
}

/** The restricted log likelihood of two spreads, and the best predictions under them. */
function given({ values, errorVariances }: SpreadInputs, sigma: number, omega: number) {
  const own = errorVariances.map((c) => sigma ** 2 * c);
  const inverse = own.map((variance) => 1 / (variance + omega ** 2));
  const information = inverse.reduce((a, b) => a + b);
  const projection = inverse.map((a, i) =>
    inverse.map((b, j) => (i === j ? a : 0) - (a * b) / information),
  );
  const projected = projection.map((row) => row.reduce((sum, p, j) => sum + p * values[j]!, 0));
  const squares = values.reduce((sum, y, i) => sum + y * projected[i]!, 0);
  const logs = inverse.reduce((sum, v) => sum + Math.log(v), 0) - Math.log(information);
  return {
    log: (logs - squares) / 2,
    effects: values.map((y, i) => ({
      mean: y - own[i]! * projected[i]!,
      sd: Math.sqrt(own[i]! - own[i]! ** 2 * projection[i]![i]!),
    })),
    next: {
      mean: values.reduce((sum, y, i) => sum + y * inverse[i]!, 0) / information,
      sd: Math.sqrt(omega ** 2 + 1 / information),
    },
  };
}

function simpson([from, to]: readonly [number, number], steps: number) {
  return Array.from({ length: steps + 1 }, (_, k) => ({
    at: from + ((to - from) * k) / steps,
    share: k === 0 || k === steps ? 1 : k % 2 === 1 ? 4 : 2,
  }));
}
