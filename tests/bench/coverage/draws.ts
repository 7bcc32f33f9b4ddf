import { seededRandom } from "../../../src/core/statistics/seededRandom";

/** Random numbers for invented squads, logs and studies; the same every time for the same name. */
export interface Draws {
  /** Between 0 and 1. */
  uniform(): number;
  /** A whole number from `least` to `most`, all equally likely. */
  whole(least: number, most: number): number;
  normal(mean?: number, sd?: number): number;
  chiSquare(df: number): number;
  /** As many results as asked for; the draw gets its number, from 0. */
  times<T>(count: number, draw: (index: number) => T): T[];
}

export function drawsFor(name: string): Draws {
  const uniform = seededRandom(hash(name));
  /** Box and Muller 1958, Ann Math Stat 29:610-611. */
  const standardNormal = () =>
    Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());

  /** A gamma number of a shape of 1/3 or more (Marsaglia and Tsang 2000, ACM Trans Math Softw 26:363-372). */
  function gamma(shape: number): number {
    if (shape < 1) return gamma(shape + 1) * uniform() ** (1 / shape);
    const d = shape - 1 / 3;
    for (;;) {
      const x = standardNormal();
      const v = (1 + x / Math.sqrt(9 * d)) ** 3;
      if (v > 0 && Math.log(1 - uniform()) < (x * x) / 2 + d * (1 - v + Math.log(v))) return d * v;
    }
  }

  return {
    uniform,
    whole: (least, most) => least + Math.floor((most - least + 1) * uniform()),
    normal: (mean = 0, sd = 1) => mean + sd * standardNormal(),
    chiSquare: (df) => 2 * gamma(df / 2),
    times: (count, draw) => Array.from({ length: count }, (_, index) => draw(index)),
  };
}

/** A seed from a name (FNV-1a), so that adding or leaving out a scenario changes no other one's numbers. */
function hash(name: string): number {
  let seed = 0x811c9dc5;
  for (const character of name) {
    seed = Math.imul(seed ^ character.codePointAt(0)!, 0x01000193) >>> 0;
  }
  return seed;
}
