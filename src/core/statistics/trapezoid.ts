import { NoAnswer } from "../problem";

/** A place at which a density was looked at, and the logarithm of how high it is there. */
export interface Place {
  readonly at: number;
  readonly log: number;
}

export interface Trapezoid<P extends Place> {
  /** The places that count, each with its share of the integral; the shares sum to 1. */
  readonly places: readonly P[];
  readonly shares: readonly number[];
  /** The logarithm of the integral of the density. */
  readonly logIntegral: number;
}

export interface TrapezoidOptions {
  /** The first, coarse step. The answer uses half of it, or less where that does not settle. */
  readonly step: number;
  /** Whether the density goes on below 0. If not, its place at 0 must come with half its height. */
  readonly bothWays: boolean;
  /** Two sums whose logarithms are this near, one of twice as many places, are near enough to take the finer one. */
  readonly settled: number;
  /** The search goes on at least to here, so that no second peak beyond a valley is missed. */
  readonly reach: number;
}

/** What lies this far below the peak, in logarithms, adds nothing: e^-40 is 4e-18. */
export const DEPTH = 40;
const MOST_HALVINGS = 24;
/** What a logarithm may be off for want of digits, as a part of itself: a finer sum would come no nearer. */
const ROUNDING = 1e-15;
/** The logarithm of a peak this far from 0 has too few digits left to tell places apart. */
const FAR = 1e10;

/**
 * The integral of a density by the trapezoidal rule, from the logarithm of the density.
 *
 * For a smooth curve that dies out on both sides, or for an even one from 0 on, the plain trapezoidal rule
 * converges so fast that half the step gives twice the right digits (Trefethen and Weideman 2014, SIAM Rev
 * 56:385-458). So the step is halved until that changes next to nothing, and only where there is something to see.
 */
export function trapezoid<P extends Place>(
  look: (at: number) => P,
  { step: coarse, bothWays, settled, reach }: TrapezoidOptions,
): Trapezoid<P> {
  const upwards = walk(look, coarse, reach);
  const downwards = bothWays ? walk(look, -coarse, 0).slice(1).reverse() : [];
  let places = aroundThePeaks([...downwards, ...upwards]);
  let step = coarse;
  let before = totalOf(places).logSum + Math.log(step);
  if (!(Math.abs(before) < FAR)) throw tooFarApart();
  for (let halving = 0; halving < MOST_HALVINGS; halving++) {
    places = aroundThePeaks(withMiddles(look, places));
    step /= 2;
    const { logSum, shares } = totalOf(places);
    const logIntegral = logSum + Math.log(step);
    if (Math.abs(logIntegral - before) < settled + ROUNDING * Math.abs(logIntegral)) {
      return { places, logIntegral, shares };
    }
    before = logIntegral;
  }
  throw tooFarApart();
}

const tooFarApart = () =>
  new NoAnswer("the values lie too far apart for their errors and the scale to integrate over");

/** Places from 0 on, at least as far as `reach`, until the density has died out. */
function walk<P extends Place>(look: (at: number) => P, step: number, reach: number): P[] {
  const start = look(0);
  const places = [start];
  let highest = start.log;
  for (let count = 1; ; count++) {
    const place = look(count * step);
    places.push(place);
    highest = Math.max(highest, place.log);
    if (Math.abs(place.at) >= reach && place.log < highest - DEPTH) return places;
  }
}

/** The places from the first that counts to the last, and one more on each side. */
function aroundThePeaks<P extends Place>(places: readonly P[]): P[] {
  const least = highestLog(places) - DEPTH;
  const first = places.findIndex(({ log }) => !(log < least));
  let end = places.length;
  while (places[end - 1]!.log < least) end--;
  return places.slice(Math.max(0, first - 1), end + 1);
}

function withMiddles<P extends Place>(look: (at: number) => P, places: readonly P[]): P[] {
  const finer: P[] = [];
  let before: P | undefined;
  for (const place of places) {
    if (before) finer.push(look((before.at + place.at) / 2));
    finer.push(place);
    before = place;
  }
  return finer;
}

/** The logarithm of the sum of all heights, and each one's share of it: by the highest, so that a sum far from 1 has its digits too. */
function totalOf(places: readonly Place[]): { logSum: number; shares: number[] } {
  const highest = highestLog(places);
  const heights = places.map(({ log }) => Math.exp(log - highest));
  const total = heights.reduce((sum, height) => sum + height, 0);
  return { logSum: highest + Math.log(total), shares: heights.map((height) => height / total) };
}

function highestLog(places: readonly Place[]): number {
  return places.reduce((highest, { log }) => Math.max(highest, log), -Infinity);
}
