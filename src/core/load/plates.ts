import { expectAtLeast, expectPositive, expectWhole, inRow } from "../checks";
import { last } from "../last";
import { BadInput, NoAnswer } from "../problem";
import { sameTo, withoutDust } from "../statistics/compare";

/** A kind of plate. */
export interface Plate {
  readonly weight: number;
  /** How many pairs of it there are; no limit unless given. */
  readonly pairs?: number;
  /** The row of the table of plates it stands on, for messages; its place in the list unless given. */
  readonly row?: number;
}

/** A bar and the plates that go with it. */
export interface PlateSet {
  readonly bar: number;
  readonly plates: readonly Plate[];
}

const unlimited = (weights: readonly number[]) => weights.map((weight) => ({ weight }));

/**
 * The usual sets: in kilograms the bar and plates of the International Weightlifting Federation's technical
 * and competition rules down to the 1.25 of every gym, in pounds the common iron plates.
 */
export const plateSets = {
  kg: { bar: 20, plates: unlimited([25, 20, 15, 10, 5, 2.5, 1.25]) },
  lb: { bar: 45, plates: unlimited([45, 35, 25, 10, 5, 2.5]) },
} as const satisfies Record<string, PlateSet>;

/** What to load where a load cannot be met exactly: nothing, or the nearest load below or above. */
export type Nearest = "exact" | "below" | "above";

/** Gives the plates of one side of the bar, largest first, for a load; an empty list is the bar alone. */
export type BarLoader = (load: number, nearest?: Nearest) => number[];

/** Cells of the table of fewest plates: enough for any gym, and done in a moment. */
const MOST_CELLS = 4_000_000;
/** More plates a side than this are a slip in a cell, not a bar. */
const MOST_PLATES = 1000;
const NO_WAY = 2 ** 30;

/**
 * Finds the fewest plates for loads on one bar, with limited pairs of each plate. Of two ways with equally
 * few, the one with the larger plates first.
 *
 * Taking the largest plate that fits is not enough: 30 a side from one pair each of 25, 20 and 10 is
 * 20 + 10. So this fills a table of the fewest plates for every sum, a kind of plate after the other
 * (dynamic programming: Bellman 1957), in steps of the plates' greatest common measure. The table serves
 * every later load, so a column of loads takes one.
 *
 * @returns A function from a load to the plates of one side, largest first.
 * @throws BadInput where a plate, the bar or a load cannot be. NoAnswer where a load cannot be made up.
 */
export function barLoader({ bar, plates }: PlateSet): BarLoader {
  expectAtLeast("bar", bar, 0);
  const rack = rackOf(plates);
  let table: FewestPlates = [];
  return (load, nearest = "exact") => {
    expectPositive("load", load);
    const side = (load - bar) / 2 / rack.measure;
    const whole = Math.round(side);
    const met = whole >= 0 && sameTo(bar + 2 * whole * rack.measure, load);
    table = tableTo(whole + rack.largest, rack, table, load);

    const fewest = last(table);
    if (met && loadable(fewest, whole)) return platesOf(whole, rack, table);
    const below = nextBelow(fewest, Math.floor(side));
    const above = nextAbove(fewest, Math.ceil(side));
    const sum = { exact: undefined, below, above }[nearest];
    if (sum !== undefined) return platesOf(sum, rack, table);
    const loadOf = (sum: number) => withoutDust(bar + 2 * sum * rack.measure);
    throw new NoAnswer(
      below === undefined
        ? `${load} is lighter than the bar (${bar})`
        : above === undefined
          ? `${load} is more than these plates make; the heaviest is ${loadOf(below)}`
          : `${load} cannot be loaded with these plates; ` +
            `the nearest are ${loadOf(below)} below and ${loadOf(above)} above`,
    );
  };
}

/** A kind of plate in the rack, its size counted in the rack's common measure. */
interface Kind {
  readonly weight: number;
  readonly size: number;
  readonly pairs: number;
}

interface Rack {
  /** From the smallest up. */
  readonly kinds: readonly Kind[];
  readonly measure: number;
  /** The size of the largest plate, and of one side with all plates on it. */
  readonly largest: number;
  readonly total: number;
}

function rackOf(plates: readonly Plate[]): Rack {
  if (plates.length === 0) throw new BadInput("there are no plates; expected a weight a row");
  plates.forEach(({ weight, pairs, row }, i) =>
    inRow(`row ${row ?? i + 1} of the plates`, () => {
      expectPositive("weight", weight);
      if (pairs !== undefined) expectWhole("pairs", pairs, 0, MOST_PLATES);
    }),
  );
  const there = plates.filter(({ pairs }) => pairs !== 0).sort((a, b) => a.weight - b.weight);
  const measure = there.map(({ weight }) => weight).reduce(commonMeasure, 0) || 1;
  const kinds = there.map(({ weight, pairs = Infinity }) => {
    const size = Math.round(weight / measure);
    if (!sameTo(size * measure, weight)) {
      throw new BadInput(
        `plates of ${weight} and ${last(there).weight} share no common step; ` +
          "expected weights with fewer decimals",
      );
    }
    return { weight, size, pairs };
  });
  return {
    kinds,
    measure,
    largest: kinds.length > 0 ? last(kinds).size : 0,
    total: kinds.reduce((sum, { size, pairs }) => sum + size * pairs, 0),
  };
}

/**
 * The greatest length that measures both weights, by Euclid's remainders. A remainder of less than a
 * thousand-millionth is binary dust: 0.3 is three times 0.1. Dust grows from remainder to remainder, so the
 * end is taken from the larger weight itself, as the whole part of it that it must be.
 */
function commonMeasure(a: number, b: number): number {
  const larger = Math.max(a, b);
  const dust = 1e-9 * larger;
  while (b > dust) {
    const rest = a % b;
    [a, b] = [b, b - rest > dust ? rest : 0];
  }
  return larger / Math.round(larger / a);
}

/** A row for each kind of plate, on top of a row for none: the fewest plates for a sum, from kinds so far. */
type FewestPlates = readonly Int32Array[];

/** The table if it reaches a sum already, else a longer one. */
function tableTo(sum: number, rack: Rack, table: FewestPlates, load: number): FewestPlates {
  const reached = (table[0]?.length ?? 0) - 1;
  const reach = Math.max(0, Math.min(sum, rack.total));
  if (reach <= reached) return table;
  const cells = Math.floor(MOST_CELLS / (rack.kinds.length + 1)) - 1;
  const most = Math.min(cells, rack.largest * MOST_PLATES);
  if (reach > most) {
    throw new BadInput(
      `load is ${load}, too many steps of ${withoutDust(2 * rack.measure)} to search; ` +
        "expected a lighter load, or plates with fewer decimals",
    );
  }
  return fewestPlates(rack.kinds, Math.min(Math.max(reach, 2 * reached), rack.total, most));
}

function fewestPlates(kinds: readonly Kind[], reach: number): FewestPlates {
  const none = new Int32Array(reach + 1).fill(NO_WAY);
  none[0] = 0;
  const rows: Int32Array[] = [none];
  for (const kind of kinds) rows.push(withKind(last(rows), kind));
  return rows;
}

/** The fewest plates once one more kind may be used. */
function withKind(before: Int32Array, kind: Kind): Int32Array {
  const mostThatFit = Math.floor((before.length - 1) / kind.size);
  return kind.pairs < mostThatFit ? withLimited(before, kind) : withUnlimited(before, kind);
}

function withUnlimited(before: Int32Array, { size }: Kind): Int32Array {
  const after = before.slice();
  for (let sum = size; sum < after.length; sum++) {
    after[sum] = Math.min(after[sum]!, after[sum - size]! + 1);
  }
  return after;
}

/**
 * Sums one plate apart form a chain; n plates lead from any place on it to the n-th after. So the best
 * place to come from is the one with the least (fewest plates − place) among the last `pairs` places and
 * the place itself: a sliding minimum, kept as a queue of places whose costs rise.
 */
function withLimited(before: Int32Array, { size, pairs }: Kind): Int32Array {
  const after = new Int32Array(before.length);
  const longest = Math.floor((before.length - 1) / size) + 1;
  const places = new Int32Array(longest);
  const costs = new Int32Array(longest);
  for (let first = 0; first < size && first < before.length; first++) {
    let head = 0;
    let tail = 0;
    for (let place = 0, sum = first; sum < before.length; place++, sum += size) {
      const cost = before[sum]! - place;
      while (tail > head && costs[tail - 1]! >= cost) tail--;
      places[tail] = place;
      costs[tail++] = cost;
      if (place - places[head]! > pairs) head++;
      after[sum] = Math.min(costs[head]! + place, NO_WAY);
    }
  }
  return after;
}

const loadable = (fewest: Int32Array, sum: number) => (fewest[sum] ?? NO_WAY) < NO_WAY;

function nextBelow(fewest: Int32Array, from: number): number | undefined {
  let sum = Math.min(from, fewest.length - 1);
  while (sum >= 0 && !loadable(fewest, sum)) sum--;
  return sum >= 0 ? sum : undefined;
}

function nextAbove(fewest: Int32Array, from: number): number | undefined {
  let sum = Math.max(from, 0);
  while (sum < fewest.length && !loadable(fewest, sum)) sum++;
  return sum < fewest.length ? sum : undefined;
}

/** Reads the plates for a sum back from the table: of each kind, from the largest, as many as the fewest allow. */
function platesOf(sum: number, { kinds }: Rack, table: FewestPlates): number[] {
  const count = last(table)[sum]!;
  if (count > MOST_PLATES) {
    throw new BadInput(`the load takes ${count} plates a side; expected at most ${MOST_PLATES}`);
  }
  const plates: number[] = [];
  for (let kind = kinds.length; kind > 0; kind--) {
    const { weight, size, pairs } = kinds[kind - 1]!;
    const fewest = table[kind]![sum]!;
    let n = Math.min(pairs, fewest, Math.floor(sum / size));
    while (table[kind - 1]![sum - n * size]! + n !== fewest) n--;
    plates.push(...new Array<number>(n).fill(weight));
    sum -= n * size;
  }
  return plates;
}
