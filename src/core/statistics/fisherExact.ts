import { hypergeometric } from "./hypergeometric";

/** Chances that differ by less than this, relatively, count as equally likely. */
const SLACK = 1e-7;

/**
 * Do two groups differ in how many reached something? Fisher's exact test, two-sided: the chance, with the
 * totals fixed, of a table no more likely than the one observed.
 *
 * Source: Fisher 1935, The Design of Experiments; the two-sided sum as in R's `fisher.test`.
 *
 * @param countA - How many of A reached it.
 * @param nA - Athletes of group A.
 * @param countB - How many of B did.
 * @param nB - Athletes of group B.
 * @returns The two-sided p.
 */
export function fisherExactP(countA: number, nA: number, countB: number, nB: number): number {
  const { least, chances } = hypergeometric(nA + nB, countA + countB, nA);
  const limit = chances[countA - least]! * (1 + SLACK);
  let p = 0;
  for (const chance of chances) if (chance <= limit) p += chance;
  return Math.min(1, p);
}
