import fc from "fast-check";
import { seededRandom } from "../src/core/statistics/seededRandom";

/**
 * What the random tests of this run start from. It is printed when a run starts, and `SEED=12 npx vitest run …` makes
 * the run of seed 12 again. Where CI is set it is always the same.
 */
export const seed = Number(process.env.SEED);

/** Applies the seed to every property; each test file is set up by this. */
fc.configureGlobal({ seed });

/** A stream of random numbers for a test, another for each `which`. */
export const randomStream = (which = 0) => seededRandom(seed + which);
