import { describe, expect, test } from "vitest";
import { spreadComponents } from "../../src/core/reserve/spreadComponents";
import { squadReserveCheck } from "../../src/core/reserve/squadReserveCheck";
import { holm } from "../../src/core/statistics/holm";
import { wilsonInterval } from "../../src/core/statistics/wilson";
import { doseResponse } from "../../src/core/studies/doseResponse";
import { morrisEffect } from "../../src/core/testing/morrisEffect";
import { twoWayAnova } from "../../src/core/testing/twoWayAnova";
import { elementAt, named } from "../present";
import { difference } from "./compare";
import { readReference, type Match } from "./data";
import { dataSet } from "./rows";

interface Stated {
  readonly match: Match;
  readonly source: string;
}
type Counted<K extends string> = Readonly<Record<K, number>>;

/** Values published for a step inside a function. */
const published = readReference("core") as {
  readonly wilson: Stated & { rows: Counted<"successes" | "n" | "low" | "high">[] };
  readonly holm: Stated & { rows: { p: number[]; adjusted: number[] }[] };
  readonly changeDifferenceVariance: Stated & {
    rows: Counted<"n" | "correlation" | "effect" | "variance">[];
  };
  readonly twoWayMeanSquares: Stated & Counted<"subjects" | "trials" | "error">;
  readonly varianceComponents: Stated &
    Counted<"within" | "between"> & {
      report: Stated & { values: Readonly<Record<string, number>> };
    };
  readonly metaRegressionVariance: Stated & Counted<"variance">;
};

const numbers = (name: string) => dataSet(name) as number[];

/** Expects each computed value to be as published. */
function meets({ match }: Stated, ...pairs: [computed: number, expected: number][]): void {
  const problems = pairs.map(([computed, expected]) => difference(computed, expected, match));
  expect(problems).toEqual(pairs.map(() => undefined));
}

describe(`Wilson's interval (${published.wilson.source})`, () => {
  test.each(published.wilson.rows)("of $successes in $n", ({ successes, n, low, high }) => {
    const interval = wilsonInterval(successes, n, 0.95);
    meets(published.wilson, [interval.low, low], [interval.high, high]);
  });
});

describe(`Holm's adjusted p values (${published.holm.source})`, () => {
  test.each(published.holm.rows)("of $p", ({ p, adjusted }) => {
    const computed = holm(p);
    expect(computed).toHaveLength(adjusted.length);
    meets(
      published.holm,
      ...adjusted.map((one, at): [number, number] => [elementAt(computed, at), one]),
    );
  });
});

describe(`the variance of an effect (${published.changeDifferenceVariance.source})`, () => {
  test.each(published.changeDifferenceVariance.rows)(
    "of $effect with $n athletes a group and a correlation of $correlation",
    ({ n, correlation, effect, variance }) => {
      const raw = { nA: n, nB: n, correlation, pooledSdBefore: 1 };
      // The published table takes the true effect as known: the change that is estimated as just that effect.
      const { effectSize: correction } = morrisEffect({ ...raw, difference: 1 });
      const known = morrisEffect({ ...raw, difference: effect / correction });
      meets(published.changeDifferenceVariance, [known.effectStandardError ** 2, variance]);
    },
  );
});

test(`the mean squares of athletes, trials and error (${published.twoWayMeanSquares.source})`, () => {
  const second = numbers("weir.trial2");
  const anova = twoWayAnova(
    numbers("weir.trial1").map((first, row) => [first, elementAt(second, row)]),
  );
  const { subjects, trials, error } = published.twoWayMeanSquares;
  meets(
    published.twoWayMeanSquares,
    [anova.betweenAthletes, subjects],
    [anova.betweenTrials, trials],
    [anova.error, error],
  );
});

describe("differences of two methods, several a subject, as if they were calls of reserve", () => {
  const subject = numbers("cardiac-output.subject");
  const other = numbers("cardiac-output.ic");
  const differences = numbers("cardiac-output.rv").map((rv, row) => rv - elementAt(other, row));
  const bySubject = [...new Set(subject)].map((one) =>
    differences.filter((_, row) => subject[row] === one),
  );
  const { within, between, report, source } = published.varianceComponents;

  test(`spread so much within and between subjects (${source})`, () => {
    const components = spreadComponents(bySubject);
    meets(published.varianceComponents, [components.within, within], [components.between, between]);
  });

  test(`have this bias, and these limits of agreement (${report.source})`, () => {
    const check = squadReserveCheck(bySubject, 0.95);
    const byLabel = Object.fromEntries(
      Object.entries(check).map(([name, value]) => [
        name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`),
        value as number,
      ]),
    );
    const pairs = Object.entries(report.values).map(([label, expected]): [number, number] => [
      named(byLabel, label),
      expected,
    ]);
    meets(report, ...pairs);
  });
});

test(`the variance between studies of one dose (${published.metaRegressionVariance.source})`, () => {
  const { betweenStudySd } = doseResponse(
    numbers("bcg.dose"),
    numbers("bcg.effect"),
    numbers("bcg.standardError"),
  );
  meets(published.metaRegressionVariance, [
    betweenStudySd ** 2,
    published.metaRegressionVariance.variance,
  ]);
});
