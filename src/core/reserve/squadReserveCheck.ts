import type { Absent } from "../problem";
import { meanTest } from "../statistics/meanTest";
import { mean, standardDeviation } from "../statistics/moments";
import { agreement, meanMiss, type ReserveCheck } from "./reserveCheck";
import { spreadComponents } from "./spreadComponents";

/**
 * How well a squad calls its reserves, several sets a lifter. Sets of one lifter are alike, so the bias is the
 * mean of the lifters' means, tested on as many values as there are lifters, and the SD of a single call is put
 * together from the spread within and between lifters.
 *
 * Source: Bland and Altman 2007, J Biopharm Stat 17:571-582.
 *
 * @param byLifter - The errors of each lifter's calls, at least one each.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The check, all in reps.
 * @throws NoAnswer where there are no errors.
 */
export function squadReserveCheck(
  byLifter: readonly (readonly number[])[],
  confidence: number,
): ReserveCheck {
  const errors = byLifter.flat();
  const ofLifters = meanTest(
    byLifter.map((own) => mean(own)),
    confidence,
  );
  const sd = sdOfOneCall(byLifter);
  return {
    n: errors.length,
    bias: ofLifters.mean,
    sd,
    meanMiss: meanMiss(errors),
    low: ofLifters.low,
    high: ofLifters.high,
    ...agreement(ofLifters.mean, sd),
    p: ofLifters.p,
  };
}

function sdOfOneCall(byLifter: readonly (readonly number[])[]): number | Absent {
  if (byLifter.length < 2)
    return { absent: "one lifter says nothing of the spread between lifters" };
  if (byLifter.every((own) => own.length === 1)) return standardDeviation(byLifter.flat());
  const { within, between } = spreadComponents(byLifter);
  return Math.sqrt(within + between);
}
