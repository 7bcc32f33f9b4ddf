import { expectWhole } from "../checks";
import { BadInput } from "../problem";
import { mean, standardDeviation } from "../statistics/moments";
import { seededRandom, shuffled } from "../statistics/seededRandom";

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
  const score = singleScore(scores);
  const sizes = new Array<number>(groups).fill(0);
  const letters = new Array<string>(scores.length);
  for (const stratum of byStratum(scores.length, strata)) {
    const ranked = stratum.sort((i, j) => score[j]! - score[i]!);
    for (let start = 0; start < ranked.length; start += groups) {
      const run = ranked.slice(start, start + groups);
      const hand = shuffled(smallestGroups(sizes, run.length, random), random);
      run.forEach((athlete, place) => {
        const group = hand[place]!;
        sizes[group]! += 1;
        letters[athlete] = LETTERS[group]!;
      });
    }
  }
  return letters;
}

/** One score an athlete: the score itself, or the mean of z-scores. A column without spread says nothing. */
function singleScore(scores: readonly (readonly number[])[]): number[] {
  const columns = scores[0]?.length ?? 0;
  if (columns <= 1 || scores.length < 2) return scores.map((row) => row[0]!);
  const scales = scores[0]!.map((_, column) => {
    const values = scores.map((row) => row[column]!);
    return { centre: mean(values), spread: standardDeviation(values) };
  });
  return scores.map((row) =>
    mean(
      row.map((x, i) => (scales[i]!.spread > 0 ? (x - scales[i]!.centre) / scales[i]!.spread : 0)),
    ),
  );
}

/** The athletes' numbers, stratum by stratum in order of first appearance. */
function byStratum(n: number, strata: readonly string[] | undefined): number[][] {
  const found = new Map<string, number[]>();
  for (let athlete = 0; athlete < n; athlete++) {
    const label = strata?.[athlete] ?? "";
    const members = found.get(label);
    if (members) members.push(athlete);
    else found.set(label, [athlete]);
  }
  return [...found.values()];
}

/** The `count` groups with the fewest athletes so far, ties at random. */
function smallestGroups(sizes: readonly number[], count: number, random: () => number): number[] {
  const all = sizes.map((_, group) => group);
  return shuffled(all, random)
    .sort((a, b) => sizes[a]! - sizes[b]!)
    .slice(0, count);
}
