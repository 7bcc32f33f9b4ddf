import { NoAnswer, type Absent } from "../problem";
import { requireStudies } from "./inputs";
import { pooledMean, type PoolOptions } from "./pooledMean";

/** The pool without one of its studies. */
export interface PoolWithout {
  /** Which study was left out, from 0. */
  readonly leftOut: number;
  readonly estimate: number;
  readonly low: number | Absent;
  readonly high: number | Absent;
  readonly p: number | Absent;
}

/**
 * Does the answer hang on one study? The pool of all the others, once for each study left out. A single study
 * that is left has no t interval; with "z" its own stands.
 *
 * Source: Viechtbauer and Cheung 2010, Res Synth Methods 1:112-125.
 *
 * @param effects - An effect a study, all in one unit.
 * @param standardErrors - The standard error of each effect, above 0.
 * @param options - What can be said besides; see its type.
 * @returns The pool without each study in turn.
 * @throws BadInput where an effect or standard error cannot be. NoAnswer where there are fewer than 2 studies.
 */
export function leaveOneOut(
  effects: readonly number[],
  standardErrors: readonly number[],
  options: PoolOptions = {},
): PoolWithout[] {
  requireStudies(effects, standardErrors);
  if (effects.length < 2) {
    throw new NoAnswer(`found ${effects.length} studies; expected at least 2`);
  }
  return effects.map((_, leftOut) => {
    const others = (_value: number, i: number) => i !== leftOut;
    const pool = pooledMean(effects.filter(others), standardErrors.filter(others), options);
    const { estimate, low, high, p } = pool;
    return { leftOut, estimate, low, high, p };
  });
}
