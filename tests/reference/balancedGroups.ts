import type { Grid } from "../../src/cells";
import { cellAt } from "../present";

interface Athlete {
  readonly score: number;
  readonly stratum: unknown;
  readonly letter: unknown;
}

/**
 * What is wrong with a split into matched groups, or nothing. A letter beside every row; group sizes differ by at
 * most 1; within each full run of ranked athletes of a stratum each letter occurs once, from the best score down or
 * from the lowest up; and the same call again gives the same split.
 */
export function imbalance(args: readonly unknown[], split: Grid, again: Grid): string | undefined {
  const [scores, groups, strata] = args as [[number][], number | null, [string][] | null];
  const letters = Array.from("ABCDEFGHIJKLMNOPQRSTUVWXYZ").slice(0, groups ?? 2);
  if (split.length !== scores.length) return `${split.length} rows for ${scores.length} scores`;
  const athletes = scores.map(([score], row): Athlete => {
    const stratum = strata ? cellAt(strata, row, 0) : "";
    return { score, stratum, letter: cellAt(split, row, 0) };
  });
  const stranger = athletes.find(({ letter }) => !letters.includes(String(letter)));
  if (stranger !== undefined) return `the letter ${String(stranger.letter)}`;
  const sizes = letters.map((own) => athletes.filter(({ letter }) => letter === own).length);
  if (Math.max(...sizes) - Math.min(...sizes) > 1) return `groups of ${sizes.join(", ")}`;
  if (JSON.stringify(split) !== JSON.stringify(again)) return "another split the second time";
  const descending = [...athletes].sort((a, b) => b.score - a.score);
  const dealt = [descending, [...descending].reverse()].some((ranked) =>
    isDealtInRuns(ranked, letters.length),
  );
  return dealt ? undefined : "a run of ranked athletes that does not hold each letter once";
}

function isDealtInRuns(ranked: readonly Athlete[], groups: number): boolean {
  const strata = new Set(ranked.map(({ stratum }) => stratum));
  return [...strata].every((one) => {
    const athletes = ranked.filter(({ stratum }) => stratum === one);
    const fullRuns = Math.floor(athletes.length / groups);
    return Array.from({ length: fullRuns }, (_, run) =>
      athletes.slice(run * groups, (run + 1) * groups),
    ).every((run) => new Set(run.map(({ letter }) => letter)).size === groups);
  });
}
