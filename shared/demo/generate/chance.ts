import { seededRandom } from "../../../src/core/statistics/seededRandom";

/** Chance that comes out the same every time. */
export interface Chance {
  /** Whether something of this probability happens. */
  happens(probability: number): boolean;
  /** A normal number (Box and Muller 1958, Ann Math Stat 29:610-611). */
  normal(mean: number, sd: number): number;
  /** One of these. */
  oneOf<T>(things: readonly T[]): T;
}

export function chanceFrom(seed: number): Chance {
  const random = seededRandom(seed);
  return {
    happens: (probability) => random() < probability,
    normal: (mean, sd) =>
      mean + sd * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random()),
    oneOf(things) {
      const thing = things[Math.floor(random() * things.length)];
      if (thing === undefined) throw new Error("there is nothing to choose from");
      return thing;
    },
  };
}
