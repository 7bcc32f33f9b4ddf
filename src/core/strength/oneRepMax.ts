import { BadInput } from "../problem";
import { fractionAt, type Equation } from "./equations";

/** The estimated one-repetition maximum: load / f(t), t being reps to failure. */
export function e1rm(load: number, repsToFailure: number, equation: Equation): number {
  return load / fractionAt(equation, repsToFailure);
}

/**
 * The e1RM for a reserve that may be called wrong by `reserveError` reps either way. However wrong the call, the
 * reps that were done were done, so the low end never goes below them.
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
      `reps plus reserve plus reserveError is ${most}; this equation is used up to ${equation.cap}`,
    );
  }
  const fewest = Math.max(reps, reps + reserve - reserveError);
  return {
    low: e1rm(load, fewest, equation),
    estimate: e1rm(load, reps + reserve, equation),
    high: e1rm(load, most, equation),
  };
}
