import { expectWhole } from "../checks";
import { BadInput } from "../problem";
import { mean, standardDeviation } from "../statistics/moments";
import { seededRandom, shuffled } from "../statistics/seededRandom";
import { transposed } from "../transposed";
import { zip } from "../zip";

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

/**
 * A group letter for each athlete so that the groups start alike: within each stratum athletes are ranked by
 * score and dealt in runs, every run holding each letter once in random order. A run too short for all
 * letters takes those of the smallest groups, so that group sizes differ by one at most.
 *
 * `scores` has a row an athlete; several columns count by the mean of their z-scores. `strata`, a label an
 * athlete, keeps athletes apart that should be split separately (women and men, seniors and juniors).
 *
 * Source: stratified block randomization, as in Altman and Bland 1999, BMJ 319:703-704.
 *
 * @param scores - A row an athlete, a score a column.
 * @param groups - How many groups, from 2 to 26.
 * @param strata - A label an athlete, for those who are split separately.
 * @param seed - A whole number; the same one gives the same groups.
 * @returns A letter an athlete.
 * @throws BadInput where `groups` or `seed` cannot be.
 */
export function balancedGroups(
  scores: readonly (readonly number[])[],
  groups: number,
  strata: readonly string[] | undefined,
  seed: number,
): string[] {
  expectWhole("groups", groups, 2, LETTERS.length);
  // The draws take a whole number: 1.5 would deal as 1 does, unseen.
  if (!Number.isSafeInteger(seed)) throw new BadInput(`seed is ${seed}; expected a whole number`);
  const random = seededRandom(seed);
  const dealt = Array.from(LETTERS.slice(0, groups), (letter): Group => ({ letter, size: 0 }));
  const letters = new Array<string>(scores.length);
  for (const stratum of byStratum(singleScore(scores), strata)) {
    const ranked = stratum.sort((one, other) => other.score - one.score);
    for (let start = 0; start < ranked.length; start += groups) {
      const run = ranked.slice(start, start + groups);
      const hand = shuffled(smallest(dealt, run.length, random), random);
      for (const [{ athlete }, group] of zip(run, hand)) {
        group.size++;
        letters[athlete] = group.letter;
      }
    }
  }
  return letters;
}

interface Group {
  readonly letter: string;
  size: number;
}

/** One score an athlete: the score itself, or the mean of z-scores. A column without spread says nothing. */
function singleScore(scores: readonly (readonly number[])[]): number[] {
  const columns = scores[0]?.length ?? 0;
  if (columns <= 1 || scores.length < 2) return scores.map((row) => mean(row));
  const scales = transposed(scores).map((values) => {
    return { centre: mean(values), spread: standardDeviation(values) };
  });
  return scores.map((row) =>
    mean(
      zip(row, scales).map(([x, { centre, spread }]) => (spread > 0 ? (x - centre) / spread : 0)),
    ),
  );
}

/** An athlete by number, with the score to rank by. */
interface Ranked {
  readonly athlete: number;
  readonly score: number;
}

/** The athletes, stratum by stratum in order of first appearance. */
function byStratum(scores: readonly number[], strata: readonly string[] | undefined): Ranked[][] {
  const found = new Map<string, Ranked[]>();
  for (const [athlete, score] of scores.entries()) {
    const label = strata?.[athlete] ?? "";
    const members = found.get(label);
    if (members) members.push({ athlete, score });
    else found.set(label, [{ athlete, score }]);
  }
  return [...found.values()];
}

/** The `count` groups with the fewest athletes so far, ties at random. */
function smallest(groups: readonly Group[], count: number, random: () => number): Group[] {
  return shuffled(groups, random)
    .sort((one, other) => one.size - other.size)
    .slice(0, count);
}
