import { describe, expect, test } from "vitest";
import * as distributions from "../../src/core/statistics/distributions";
import { named } from "../present";
import { difference } from "./compare";
import { readReference, type Match } from "./data";

const VALUES = ["p", "df", "df1", "df2", "t", "n", "difference", "alpha"] as const;
type Quantity = Readonly<Record<(typeof VALUES)[number], number>>;

interface DistributionRow extends Quantity {
  readonly quantity: string;
  readonly expected: number;
  readonly match: Match;
  readonly source: string;
  readonly mark: string;
}

/** What each quantity of the data is here. */
const QUANTITIES: Readonly<Record<string, (row: Quantity) => number>> = {
  "t quantile": ({ p, df }) => distributions.studentQuantile(p, df),
  "chi-square quantile": ({ p, df }) => distributions.chiSquareQuantile(p, df),
  "F quantile": ({ p, df1, df2 }) => distributions.fQuantile(p, df1, df2),
  "t two-sided p": ({ t, df }) => distributions.twoSidedP(t, df),
  "small-sample correction": ({ df }) => distributions.hedgesCorrection(df),
  "power of two groups": ({ n, difference, alpha }) =>
    power(2 * n - 2, difference * Math.sqrt(n / 2), alpha),
  "power of pairs": ({ n, difference, alpha }) => power(n - 1, difference * Math.sqrt(n), alpha),
};

/** The chance that a two-sided t test finds a difference of that noncentrality, in either tail. */
function power(df: number, noncentrality: number, alpha: number): number {
  const critical = distributions.criticalValue(1 - alpha, df);
  const { noncentralTCdf } = distributions;
  return (
    1 - noncentralTCdf(critical, df, noncentrality) + noncentralTCdf(-critical, df, noncentrality)
  );
}

const rows = (readReference("distributions") as DistributionRow[]).map((row) => {
  const at = VALUES.filter((name) => name in row).map((name) => `${name} ${row[name]}`);
  const exactness = JSON.stringify(row.match);
  return { row, title: `${row.quantity} at ${at.join(", ")}, ${exactness} (${row.source})` };
});

describe("the distributions", () => {
  test.each(rows)("$title", ({ row }) => {
    const computed = named(QUANTITIES, row.quantity)(row);
    expect(difference(computed, row.expected, row.match)).toBeUndefined();
  });
});
