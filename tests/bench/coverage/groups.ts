import { adjustedDifference } from "../../../src/core/testing/adjustedDifference";
import { detectableDifference } from "../../../src/core/testing/detectableDifference";
import { groupChange, type TrainingGroup } from "../../../src/core/testing/groupChange";
import { sampleSize } from "../../../src/core/testing/sampleSize";
import { testTable } from "../../../src/core/testing/testTable";
import { welchTest } from "../../../src/core/statistics/welch";
import type { Draws } from "./draws";
import type { Scenario } from "./scenario";

interface Crew {
  readonly n: number;
  /** The spread of the scores after about their line, or of the changes. */
  readonly sd: number;
}

/** A crew whose score after goes along with the score before, and by so much more. */
function crew(draws: Draws, name: string, { n, sd }: Crew, gain: number): TrainingGroup {
  const before = draws.times(n, () => draws.normal(100, 10));
  return {
    name,
    before,
    after: before.map((score) => 20 + 0.8 * score + gain + sd * draws.normal()),
  };
}

const within = (low: unknown, truth: number, high: unknown) =>
  Number(low) <= truth && truth <= Number(high);

const adjusted = (a: Crew, b: Crew, kind: Scenario["case"]): Scenario => ({
  function: "GROUPCHANGE",
  event: "adjusted low to adjusted high holds the difference",
  truth: `crews of ${a.n} and ${b.n}, SDs about their lines of ${a.sd} and ${b.sd}`,
  case: kind,
  promised: "95%",
  band: [0.925, 0.975],
  run: (draws) => {
    const { low, high } = adjustedDifference(crew(draws, "A", a, 4), crew(draws, "B", b, 0), 0.95);
    return within(low, 4, high);
  },
});

/** Changes that spread by 4 beyond an error of 3, which the other crew shows alone. */
const extraSpread: Scenario = {
  function: "GROUPCHANGE",
  event: "extra spread low to extra spread high holds the true extra SD",
  truth: "crews of 14 and 14, changes spread by an SD of 5 and of 3",
  case: "good",
  promised: "95%",
  band: [0.93, 0.98],
  run: (draws) => {
    const changed = (name: string, sd: number) => {
      const before = draws.times(14, () => draws.normal(100, 10));
      return { name, before, after: before.map((score) => score + sd * draws.normal()) };
    };
    const result = groupChange(changed("A", 5), changed("B", 3), 0.95);
    return within(result.extraSpreadLow, 4, result.extraSpreadHigh);
  },
};

const anyMeasure: Scenario = {
  function: "TESTTABLE",
  event: "any of four measures has a Holm p below 0.05",
  truth: "crews of 6 and 18 that gained alike, SDs of 9 and 3",
  case: "bad",
  promised: "at most 5%",
  band: [0, 0.07],
  run: (draws) => {
    const measures = draws.times(4, (i) => ({
      measure: String(i),
      a: crew(draws, "A", { n: 6, sd: 9 }, 0),
      b: crew(draws, "B", { n: 18, sd: 3 }, 0),
    }));
    return testTable(measures, 0.95).some(({ holmP }) => Number(holmP) < 0.05);
  },
};

/** Whether two crews of the size asked for find a difference of one SD, adjusted or not. */
const found = (correlation: number): Scenario => {
  const plan = { difference: 1, sd: 1, power: 0.8, alpha: 0.05, dropout: 0 };
  const n = sampleSize({ ...plan, design: "two groups", correlation });
  return {
    function: "SAMPLESIZE",
    event: "a difference of 1 SD has a p below 0.05",
    truth: `two crews of ${n}, as asked for a correlation of ${correlation}`,
    case: correlation === 0 ? "good" : "bad",
    promised: "80% or a little more",
    band: [0.78, 0.93],
    run: (draws) => {
      const start = draws.times(2, () => draws.times(n, () => draws.normal()));
      const rest = Math.sqrt(1 - correlation ** 2);
      const [a, b] = start.map((before, group) => ({
        before,
        after: before.map((x) => correlation * x + rest * draws.normal() + (group === 0 ? 1 : 0)),
      }));
      const test =
        correlation === 0 ? welchTest(a!.after, b!.after, 0.95) : adjustedDifference(a!, b!, 0.95);
      return Number(test.p) < 0.05;
    },
  };
};

/** DETECTABLE supposes one spread; Welch's test, which does not, pays for that where the crews differ in size. */
const seen = (nA: number, nB: number, kind: Scenario["case"]): Scenario => ({
  function: "DETECTABLE",
  event: "a difference of that size has a p below 0.05, by Welch",
  truth: `crews of ${nA} and ${nB}`,
  case: kind,
  promised: "80%",
  band: kind === "good" ? [0.78, 0.82] : [0.74, 0.82],
  run: (draws) => {
    const size = detectableDifference(nA, nB, 0.8, 0.05);
    const a = draws.times(nA, () => draws.normal(size));
    const b = draws.times(nB, () => draws.normal());
    return Number(welchTest(a, b, 0.95).p) < 0.05;
  },
});

export const groups: readonly Scenario[] = [
  adjusted({ n: 12, sd: 4 }, { n: 12, sd: 4 }, "good"),
  adjusted({ n: 6, sd: 9 }, { n: 18, sd: 3 }, "bad"),
  extraSpread,
  anyMeasure,
  found(0),
  found(0.8),
  seen(14, 14, "good"),
  seen(8, 20, "bad"),
];
