import { studyChangeDifference } from "../../../src/core/studies/studyChangeDifference";
import { studyDifference } from "../../../src/core/studies/studyDifference";
import { mean, standardDeviation } from "../../../src/core/statistics/moments";
import type { Draws } from "./draws";
import { holds } from "./holds";
import { pools } from "./pools";
import type { Family, Scenario } from "./scenario";

interface Group {
  readonly n: number;
  readonly sd: number;
}

const inWords = (a: Group, b: Group) => `groups of ${a.n} and ${b.n}, SDs of ${a.sd} and ${b.sd}`;

function summary(draws: Draws, { n, sd }: Group, truth: number) {
  const values = draws.times(n, () => draws.normal(truth, sd));
  return { mean: mean(values), sd: standardDeviation(values), n };
}

const difference = (kind: Scenario["case"], a: Group, b: Group): Scenario => ({
  function: "STUDYDIFF",
  event: "interval holds the difference",
  truth: inWords(a, b),
  case: kind,
  promised: "95%",
  band: [0.93, 0.97],
  run: (draws) => holds(studyDifference(summary(draws, a, 105), summary(draws, b, 100)), 5),
});

/** The effect size is the difference over the SD that both groups share, or their mean one. */
const effect = (kind: Scenario["case"], a: Group, b: Group, band: Scenario["band"]): Scenario => ({
  function: "STUDYDIFF",
  event: "effect size's interval holds the effect",
  truth: inWords(a, b),
  case: kind,
  promised: "95%",
  band,
  run: (draws) => {
    const answer = studyDifference(summary(draws, a, 105), summary(draws, b, 100));
    const truth = 5 / Math.sqrt((a.sd ** 2 + b.sd ** 2) / 2);
    return holds({ low: answer.effectLow, high: answer.effectHigh }, truth);
  },
});

/** A trial before and after, its correlation guessed. */
const changes = (truly: number, guessed: number, band: Scenario["band"]): Scenario => ({
  function: "STUDYCHANGEDIFF",
  event: "effect size's interval holds the effect",
  truth: `groups of 15, correlation ${truly}, ${truly === guessed ? "known" : `taken for ${guessed}`}`,
  case: truly === guessed ? "good" : "bad",
  promised: truly === guessed ? "95%" : "nothing: try several correlations",
  band,
  run: (draws) => {
    const group = (gain: number) => {
      const before = draws.times(15, () => draws.normal(100, 10));
      const after = before.map(
        (score) =>
          100 + gain + truly * (score - 100) + draws.normal(0, 10 * Math.sqrt(1 - truly ** 2)),
      );
      return {
        before: mean(before),
        after: mean(after),
        sdBefore: standardDeviation(before),
        n: 15,
      };
    };
    const answer = studyChangeDifference(group(9), group(4), guessed);
    return holds({ low: answer.effectLow, high: answer.effectHigh }, 0.5);
  },
});

export const studies: Family = {
  name: "studies",
  scenarios: [
    difference("good", { n: 12, sd: 10 }, { n: 12, sd: 10 }),
    difference("bad", { n: 5, sd: 20 }, { n: 25, sd: 5 }),
    effect("good", { n: 12, sd: 10 }, { n: 12, sd: 10 }, [0.93, 0.97]),
    effect("bad", { n: 8, sd: 15 }, { n: 24, sd: 5 }, [0.7, 0.9]),
    changes(0.8, 0.8, [0.92, 0.98]),
    changes(0.8, 0.5, [0.97, 1]),
    changes(0.6, 0.9, [0.5, 0.85]),
    ...pools,
  ],
};
