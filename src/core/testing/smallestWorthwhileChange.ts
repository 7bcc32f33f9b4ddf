import { expectPositive } from "../checks";
import { NoAnswer } from "../problem";
import { standardDeviation } from "../statistics/moments";

/**
 * The smallest worthwhile change of a test: a fraction, by custom 0.2, of the spread between athletes.
 *
 * Source: Cohen 1988 for 0.2 as a small effect; Hopkins 2004, Sportscience 8:1-7.
 *
 * @param scores - A score an athlete, in the test's unit.
 * @param fraction - Of the spread between athletes; 0.2 is usual.
 * @returns The change in the test's unit.
 * @throws BadInput where `fraction` is not above 0. NoAnswer where the scores do not spread.
 */
export function smallestWorthwhileChange(scores: readonly number[], fraction: number): number {
  expectPositive("fraction", fraction);
  if (scores.length < 2) {
    throw new NoAnswer(`a spread between athletes needs at least 2 scores; found ${scores.length}`);
  }
  const sd = standardDeviation(scores);
  if (sd === 0) throw new NoAnswer("all scores are the same, so there is no spread to take from");
  return fraction * sd;
}
