import { expectWhole } from "../checks";
import { fisherExactP } from "../statistics/fisherExact";
import { wilsonInterval } from "../statistics/wilson";

/** More athletes than any study has; beyond it a count is a slip. */
const MOST = 1e6;

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
