import { expectWhole } from "../checks";
import { fisherExactP } from "../statistics/fisherExact";
import { wilsonInterval } from "../statistics/wilson";

/** More athletes than any study has; beyond it a count is a slip. */
const MOST = 1e6;

/** How many more passed it in one group. */
export interface ResponderDifference {
  readonly shareA: number;
  readonly shareB: number;
  readonly difference: number;
  readonly low: number;
  readonly high: number;
  readonly p: number;
}

/**
 * Did more athletes respond in A than in B? The difference of the two shares with an interval put together
 * from their Wilson intervals, and Fisher's exact test.
 *
 * Source: Newcombe 1998, Stat Med 17:873-890, method 10.
 *
 * @param respondersA - How many of A responded.
 * @param nA - Athletes of group A.
 * @param respondersB - How many of B responded.
 * @param nB - Athletes of group B.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The shares and their difference with its interval and p.
 * @throws BadInput where a count is not a whole number, or above its group.
 */
export function responderDifference(
  respondersA: number,
  nA: number,
  respondersB: number,
  nB: number,
  confidence: number,
): ResponderDifference {
  expectWhole("nA", nA, 1, MOST);
  expectWhole("nB", nB, 1, MOST);
  expectWhole("respondersA", respondersA, 0, nA);
  expectWhole("respondersB", respondersB, 0, nB);
  const a = wilsonInterval(respondersA, nA, confidence);
  const b = wilsonInterval(respondersB, nB, confidence);
  const difference = a.share - b.share;
  return {
    shareA: a.share,
    shareB: b.share,
    difference,
    low: difference - Math.hypot(a.share - a.low, b.high - b.share),
    high: difference + Math.hypot(a.high - a.share, b.share - b.low),
    p: fisherExactP(respondersA, nA, respondersB, nB),
  };
}
