/** An invented rowing squad: nobody here exists. */
export interface Rower {
  readonly name: string;
  /** True one-repetition maxima on the first day, in kilograms. */
  readonly maxima: Readonly<Record<Lift, number>>;
  /** What eleven weeks add, as a fraction. */
  readonly gain: number;
  /** The rower's own curve constant: how slowly the load falls as the reps rise. */
  readonly constant: number;
  /** By how many reps more than there are this rower takes a set for closer to failure, before learning. */
  readonly caution: number;
  /** How often a reserve is not written down. */
  readonly forgets: number;
  /** The share of sessions missed. */
  readonly misses: number;
}

export const LIFTS = [
  "Back squat",
  "Deadlift",
  "Bench pull",
  "Bench press",
  "Overhead press",
] as const;

export type Lift = (typeof LIFTS)[number];

const rower = (
  name: string,
  maxima: readonly [number, number, number, number, number],
  [gain, constant, caution, forgets, misses]: readonly [number, number, number, number, number],
): Rower => ({
  name,
  maxima: Object.fromEntries(LIFTS.map((lift, at) => [lift, maxima[at]])) as Rower["maxima"],
  gain,
  constant,
  caution,
  forgets,
  misses,
});

/** Maxima in the order of `LIFTS`; then gain, constant, caution, forgets, misses. */
export const SQUAD: readonly Rower[] = [
  rower("Ines Duarte", [102, 125, 74, 60, 42], [0.09, 30, 1.4, 0.06, 0.02]),
  rower("Marit Solberg", [118, 140, 82, 66, 47], [0.06, 27, 0.6, 0.04, 0.03]),
  rower("Joana Prates", [92, 112, 68, 52, 38], [0.12, 33, 2.2, 0.1, 0.05]),
  rower("Tuva Lindqvist", [110, 132, 78, 63, 45], [0.07, 29, 1.1, 0.25, 0.03]),
  rower("Bram Verhoeven", [158, 188, 108, 104, 70], [0.05, 26, 0.3, 0.05, 0.02]),
  rower("Callum Reid", [146, 175, 102, 96, 64], [0.08, 31, 1.7, 0.12, 0.04]),
  rower("Emre Sayar", [138, 168, 98, 90, 61], [0.1, 30, 1.9, 0.08, 0.06]),
  rower("Piotr Zawada", [165, 196, 112, 110, 74], [0.04, 25, -0.4, 0.06, 0.02]),
];
