import { last } from "../last";
import { levelLogLikelihood, type LevelSeries, type LevelVariances } from "./localLevel";

/** Where the search looks: logarithms of both variances, −Infinity for a variance of zero. */
interface Place {
  readonly walk: number;
  readonly noise: number;
}

/** A place, and the log-likelihood there. */
interface Point extends Place {
  readonly height: number;
}

const ZERO = -Infinity;
/** Between points of the first, coarse look, in logarithms of a variance. */
const COARSE = 1.5;
/** How far below the largest sensible variance the search reaches: a ten-thousand-millionth. */
const DEPTH = Math.log(1e10);
/** Where the search ends: a millionth of a variance. */
const FINE = 1e-6;
/** Log-likelihoods nearer than this cannot be told apart; the simpler model is then the answer. */
const SAME_HEIGHT = 1e-8;
const MOST_MOVES = 1000;

/**
 * The two variances of the local-level model by maximum likelihood, at least 0 each.
 *
 * The likelihood may be nearly flat, and its top may lie on an edge where a variance is exactly 0. So this
 * never follows a slope that might lead away: it looks over a grid between bounds that the data give, then
 * climbs from the best point of each edge and from the best inside, trying the neighbours at ever smaller
 * distances (a pattern search: Torczon 1997, SIAM J Optim 7:1-25), and takes the highest top.
 *
 * The upper bounds lose nothing. No value can surprise the filter by more than the range of all values;
 * with either variance above its bound each surprise is expected to be larger than that, and less is
 * likelier.
 */
export function fitLevelVariances(series: LevelSeries): LevelVariances {
  const { times, values } = series;
  const range = values.reduce((a, b) => Math.max(a, b)) - values.reduce((a, b) => Math.min(a, b));
  if (range === 0) return { walk: 0, noise: 0 };

  const shortest = times.slice(1).reduce((gap, t, i) => Math.min(gap, t - times[i]!), Infinity);
  const span = last(times) - times[0]!;
  const highest = { walk: Math.log(range ** 2 / shortest), noise: Math.log(range ** 2) };
  const lowest = { walk: Math.log(range ** 2 / span) - DEPTH, noise: highest.noise - DEPTH };
  const look = ({ walk, noise }: Place): Point => {
    const variances = { walk: Math.exp(walk), noise: Math.exp(noise) };
    return { walk, noise, height: levelLogLikelihood(series, variances) };
  };

  const walks = ladder(lowest.walk, highest.walk);
  const noises = ladder(lowest.noise, highest.noise);
  const edgesAndInside: Place[][] = [
    noises.map((noise) => ({ walk: ZERO, noise })),
    walks.map((walk) => ({ walk, noise: ZERO })),
    walks.flatMap((walk) => noises.map((noise) => ({ walk, noise }))),
  ];
  let best = look({ walk: ZERO, noise: ZERO });
  for (const places of edgesAndInside) {
    const top = climb(look, highestOf(places.map(look)), lowest, highest);
    if (top.height > best.height + SAME_HEIGHT) best = top;
  }
  return { walk: Math.exp(best.walk), noise: Math.exp(best.noise) };
}

/** Moves to the best neighbour while one is better, then looks nearer by. From an edge it stays on the edge. */
function climb(look: (place: Place) => Point, start: Point, lowest: Place, highest: Place): Point {
  let here = start;
  let distance = COARSE / 2;
  for (let moves = 0; distance > FINE && moves < MOST_MOVES; moves++) {
    const walks = beside(here.walk, distance, lowest.walk, highest.walk);
    const noises = beside(here.noise, distance, lowest.noise, highest.noise);
    const around = walks.flatMap((walk) => noises.map((noise) => look({ walk, noise })));
    const next = highestOf(around);
    if (next.height > here.height) here = next;
    else distance /= 2;
  }
  return here;
}

function beside(value: number, distance: number, lowest: number, highest: number): number[] {
  if (value === ZERO) return [ZERO];
  return [value, Math.max(value - distance, lowest), Math.min(value + distance, highest)];
}

const highestOf = (points: readonly Point[]) =>
  points.reduce((best, point) => (point.height > best.height ? point : best));

function ladder(low: number, high: number): number[] {
  const rungs = Math.ceil((high - low) / COARSE);
  return Array.from({ length: rungs + 1 }, (_, i) => low + ((high - low) * i) / rungs);
}
