import { BadInput } from "../problem";
import { equations, fractionAt, type Equation } from "./equations";

/**
 * The estimated one-repetition maximum: load / f(t), t being reps to failure.
 *
 * Source: the equation's, as named beside it.
 *
 * @param load - The load, in kilograms or pounds, above 0.
 * @param repsToFailure - Reps done plus reps in reserve, from 1 to the equation's cap.
 * @param equation - One of `equations`, or a lifter's `ownCurve`.
 * @returns The maximum in the load's unit.
 * @throws BadInput where `repsToFailure` is below 1 or above the equation's cap.
 */
export function e1rm(load: number, repsToFailure: number, equation: Equation): number {
  return load / fractionAt(equation, repsToFailure);
}

/**
 * The e1RM for a reserve that may be called wrong by `reserveError` reps either way. However wrong the call, the
 * reps that were done were done, so the low end never goes below them.
 *
 * Source: the equation's, as named beside it.
 *
 * @param load - The load, in kilograms or pounds, above 0.
 * @param reps - Reps done, at least 1.
 * @param reserve - Reps in reserve, 0 or more.
 * @param reserveError - How many reps the call may be wrong, 0 or more.
 * @param equation - One of `equations`, or a lifter's `ownCurve`.
 * @returns Low end, estimate and high end in the load's unit.
 * @throws BadInput where reps, reserve and its error together are above the equation's cap.
 */
export function e1rmBand(
  load: number,
  reps: number,
  reserve: number,
  reserveError: number,
  equation: Equation,
): { low: number; estimate: number; high: number } {
  const most = reps + reserve + reserveError;
  if (most > equation.cap) {
    throw new BadInput(
      `reps plus reserve plus reserveError is ${most}; expected at most ${equation.cap} for this equation`,
    );
  }
  const fewest = Math.max(reps, reps + reserve - reserveError);
  return {
    low: e1rm(load, fewest, equation),
    estimate: e1rm(load, reps + reserve, equation),
    high: e1rm(load, most, equation),
  };
}

/**
 * The e1RM band over all published equations that reach so many reps: its low end by the equation that says least,
 * its high end by the one that says most, and the estimate by Epley's. Far from a single the equations differ more
 * than a call of reserve can be wrong: 60 for 20 reps is anything from 81 to 102.
 *
 * Source: the equations', as named beside them; the band over all is our own.
 *
 * @param load - The load, in kilograms or pounds, above 0.
 * @param reps - Reps done, at least 1.
 * @param reserve - Reps in reserve, 0 or more.
 * @param reserveError - How many reps the call may be wrong, 0 or more.
 * @returns Low end, estimate and high end in the load's unit.
 * @throws BadInput where reps, reserve and its error together are above the cap of Epley's equation.
 */
export function e1rmBandOfAll(
  load: number,
  reps: number,
  reserve: number,
  reserveError: number,
): { low: number; estimate: number; high: number } {
  const { estimate, low, high } = e1rmBand(load, reps, reserve, reserveError, equations.epley);
  const bands = Object.values<Equation>(equations)
    .filter(({ cap }) => reps + reserve + reserveError <= cap)
    .map((equation) => e1rmBand(load, reps, reserve, reserveError, equation));
  return {
    low: bands.reduce((least, band) => Math.min(least, band.low), low),
    estimate,
    high: bands.reduce((most, band) => Math.max(most, band.high), high),
  };
}
