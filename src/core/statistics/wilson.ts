import { criticalValue } from "./inference";

/** A share and its interval. */
export interface Share {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The share `count` of `n` with Wilson's interval, which stays between 0 and 1 and works for none and all.
 *
 * Source: Wilson 1927, J Am Stat Assoc 22:209-212; Newcombe 1998, Stat Med 17:857-872, method 3.
 *
 * @param count - How many of them, from 0 to n.
 * @param n - How many in all, at least 1.
 * @param confidence - How sure the interval is to be, above 0 and below 1; 0.95 is usual.
 * @returns The share with its interval.
 * @throws BadInput where `confidence` is not between 0 and 1.
 */
export function wilsonInterval(count: number, n: number, confidence: number): Share {
  const z2 = criticalValue(confidence) ** 2;
  const share = count / n;
  const centre = (count + z2 / 2) / (n + z2);
  const reach = Math.sqrt(z2 * (n * share * (1 - share) + z2 / 4)) / (n + z2);
  return {
    share,
    low: count === 0 ? 0 : centre - reach,
    high: count === n ? 1 : centre + reach,
  };
}
