import { studyDifference } from "../../../src/core/studies/studyDifference";
import { mean, standardDeviation } from "../../../src/core/statistics/moments";
import type { Draws } from "./draws";
import type { Family, Scenario } from "./scenario";

const studyDiff: Scenario[] = [
  difference("good", { n: 12, sd: 10 }, { n: 12, sd: 10 }),
  difference("bad", { n: 5, sd: 20 }, { n: 25, sd: 5 }),
];

interface Group {
  readonly n: number;
  readonly sd: number;
}

function difference(kind: Scenario["case"], a: Group, b: Group): Scenario {
  const summary = (draws: Draws, { n, sd }: Group, truth: number) => {
    const values = draws.times(n, () => draws.normal(truth, sd));
    return { mean: mean(values), sd: standardDeviation(values), n };
  };
  return {
    function: "STUDYDIFF",
    event: "interval holds the difference",
    truth: `groups of ${a.n} and ${b.n}, SDs of ${a.sd} and ${b.sd}`,
    case: kind,
    promised: "95%",
    band: [0.93, 0.97],
    run: (draws) => {
      const { low, high } = studyDifference(summary(draws, a, 105), summary(draws, b, 100));
      return low <= 5 && 5 <= high;
    },
  };
}

export const studies: Family = { name: "studies", scenarios: [...studyDiff] };
