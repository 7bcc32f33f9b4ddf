import { equivalence } from "../../../src/core/testing/equivalence";
import { minimalDetectableChange } from "../../../src/core/testing/minimalDetectableChange";
import { pairedChange } from "../../../src/core/testing/pairedChange";
import { reliability, type Reliability } from "../../../src/core/testing/reliability";
import { responderDifference } from "../../../src/core/testing/responderDifference";
import { responders } from "../../../src/core/testing/responders";
import { welchTest } from "../../../src/core/statistics/welch";
import type { Draws } from "./draws";
import { holds } from "./holds";
import type { Family, Scenario } from "./scenario";

const CONFIDENCE = 0.95;

/** Athletes tested several times with nothing between: a spread of 10 between them, an error of 3. */
const BETWEEN = 10;
const ERROR = 3;

/** In the bad case the error grows with the score, from 1.5 at the weakest to 6 at the strongest. */
type Errors = "alike" | "growing";
const errorOf = (truth: number, errors: Errors) =>
  errors === "alike" ? ERROR : Math.min(6, Math.max(1.5, ERROR + (truth - 100) * 0.15));

const retests = (draws: Draws, athletes: number, trials: number, errors: Errors) =>
  draws.times(athletes, () => {
    const truth = draws.normal(100, BETWEEN);
    return draws.times(trials, () => draws.normal(truth, errorOf(truth, errors)));
  });

type Judged = "typical error" | "icc consistency" | "icc agreement" | "shift";
const judged: Readonly<Record<Judged, (answer: Reliability) => boolean>> = {
  "typical error": ({ errorLow: low, errorHigh: high }) => holds({ low, high }, ERROR),
  "icc consistency": ({ iccConsistencyLow: low, iccConsistencyHigh: high }) =>
    holds({ low, high }, BETWEEN ** 2 / (BETWEEN ** 2 + ERROR ** 2)),
  "icc agreement": ({ iccAgreementLow: low, iccAgreementHigh: high }) =>
    holds({ low, high }, BETWEEN ** 2 / (BETWEEN ** 2 + ERROR ** 2)),
  shift: ({ shiftLow: low, shiftHigh: high }) => holds({ low, high }, 0),
};

const reliable = (what: Judged, athletes: number, trials: number): Scenario => ({
  function: "RELIABILITY",
  event: `interval holds the ${what}`,
  truth: `${athletes} athletes, ${trials} trials, one error for all`,
  case: "good",
  promised: "95%",
  band: [0.93, 0.975],
  run: (draws) => judged[what](reliability(retests(draws, athletes, trials, "alike"), CONFIDENCE)),
});

/** How often an athlete who did not change stays within the detectable change. */
const detectable = (athletes: number, errors: Errors, band: Scenario["band"]): Scenario => ({
  function: "RELIABILITY",
  event: `an unchanged ${errors === "alike" ? "" : "strong "}athlete stays within the detectable change`,
  truth: `${athletes} athletes, 2 trials, ${errors === "alike" ? "one error for all" : "the error grows with the score"}`,
  case: errors === "alike" ? "good" : "bad",
  promised: "95%",
  band,
  run: (draws) => {
    const { detectableChange } = reliability(retests(draws, athletes, 2, errors), CONFIDENCE);
    const error = errorOf(errors === "alike" ? 100 : 110, errors);
    return Math.abs(draws.normal(0, Math.SQRT2 * error)) <= detectableChange;
  },
});

const mdc = (withDf: boolean, band: Scenario["band"]): Scenario => ({
  function: "MDC",
  event: "an unchanged athlete stays within it",
  truth: `typical error of 10 athletes tested twice, df ${withDf ? "given" : "left out"}`,
  case: withDf ? "good" : "bad",
  promised: "95%",
  band,
  run: (draws) => {
    const { typicalError, df } = reliability(retests(draws, 10, 2, "alike"), CONFIDENCE);
    const change = minimalDetectableChange(typicalError, CONFIDENCE, withDf ? df : undefined);
    return Math.abs(draws.normal(0, Math.SQRT2 * ERROR)) <= change;
  },
});

/** Changes of 4 on average: even, or skewed as where a few gain much and most little. */
const paired = (athletes: number, skewed: boolean, band: Scenario["band"]): Scenario => ({
  function: "PAIREDCHANGE",
  event: "interval holds the mean change",
  truth: `${athletes} athletes, ${skewed ? "most gain little and a few much" : "changes spread evenly about their mean"}`,
  case: skewed ? "bad" : "good",
  promised: "95%",
  band,
  run: (draws) => {
    const before = draws.times(athletes, () => draws.normal(100, 10));
    const change = () => (skewed ? 2 * draws.chiSquare(2) : draws.normal(4, 4));
    return holds(
      pairedChange(
        before,
        before.map((score) => score + change()),
        CONFIDENCE,
      ),
      4,
    );
  },
});

const pairedEffect = (athletes: number, band: Scenario["band"]): Scenario => ({
  function: "PAIREDCHANGE",
  event: "effect size ± 1.96 of its standard errors holds the effect",
  truth: `${athletes} athletes, before and after go together by 0.9`,
  case: "good",
  promised: "95%",
  band,
  run: (draws) => {
    const before = draws.times(athletes, () => draws.normal(100, 10));
    const noise = 10 * Math.sqrt(1 - 0.9 ** 2);
    const after = before.map((score) => 104 + 0.9 * (score - 100) + draws.normal(0, noise));
    const { effectSize, effectStandardError } = pairedChange(before, after, CONFIDENCE);
    const reach = 1.96 * (effectStandardError as number);
    const middle = effectSize as number;
    return holds({ low: middle - reach, high: middle + reach }, 0.4);
  },
});

const share = (
  athletes: number,
  chance: number,
  kind: Scenario["case"],
  band: Scenario["band"],
) => ({
  function: "RESPONDERS",
  event: "interval holds the share",
  truth: `${athletes} athletes, true share ${chance}`,
  case: kind,
  promised: "95%",
  band,
  run: (draws: Draws) => {
    const before = draws.times(athletes, () => 100);
    const after = before.map(() => (draws.uniform() < chance ? 110 : 100));
    return holds(responders(before, after, 5, CONFIDENCE), chance);
  },
});

const count = (draws: Draws, athletes: number, chance: number) =>
  draws.times(athletes, () => draws.uniform() < chance).filter(Boolean).length;

const shares = (
  [nA, chanceA]: readonly [number, number],
  [nB, chanceB]: readonly [number, number],
  kind: Scenario["case"],
  band: Scenario["band"],
): Scenario => ({
  function: "RESPONDERDIFF",
  event: "interval holds the difference",
  truth: `groups of ${nA} and ${nB}, true shares ${chanceA} and ${chanceB}`,
  case: kind,
  promised: "95%",
  band,
  run: (draws) => {
    const [a, b] = [count(draws, nA, chanceA), count(draws, nB, chanceB)];
    return holds(responderDifference(a, nA, b, nB, CONFIDENCE), chanceA - chanceB);
  },
});

const falseDifference: Scenario = {
  function: "RESPONDERDIFF",
  event: "p below 0.05 although the shares are the same",
  truth: "groups of 12 and 12, true shares 0.4 and 0.4",
  case: "good",
  promised: "at most 5%",
  band: [0, 0.05],
  run: (draws) => {
    const [a, b] = [count(draws, 12, 0.4), count(draws, 12, 0.4)];
    return responderDifference(a, 12, b, 12, CONFIDENCE).p < 0.05;
  },
};

/** Two groups that differ by exactly the margin, the worst truth for a claim of equivalence. */
const same = (
  nA: number,
  nB: number,
  sdA: number,
  sdB: number,
  kind: Scenario["case"],
): Scenario => ({
  function: "EQUIVALENCE",
  event: '"the same within the margin" although the groups differ by it',
  truth: `groups of ${nA} and ${nB}, SDs of ${sdA} and ${sdB}, margin 6; standard error and df by Welch`,
  case: kind,
  promised: "at most 5%",
  band: [0, 0.055],
  run: (draws) => {
    const a = draws.times(nA, () => draws.normal(106, sdA));
    const b = draws.times(nB, () => draws.normal(100, sdB));
    const { difference, standardError, df } = welchTest(a, b, CONFIDENCE);
    const { reading } = equivalence(difference, standardError as number, df as number, 6, 0.05);
    return reading === "the same within the margin";
  },
});

export const comparisons: Family = {
  name: "comparisons",
  scenarios: [
    reliable("typical error", 12, 2),
    reliable("typical error", 8, 3),
    reliable("shift", 12, 3),
    reliable("icc consistency", 12, 2),
    reliable("icc agreement", 12, 3),
    detectable(10, "alike", [0.93, 0.97]),
    detectable(20, "growing", [0.7, 0.93]),
    mdc(true, [0.93, 0.97]),
    mdc(false, [0.86, 0.94]),
    paired(8, false, [0.93, 0.97]),
    paired(8, true, [0.82, 0.94]),
    pairedEffect(20, [0.9, 0.98]),
    pairedEffect(6, [0.8, 0.98]),
    share(20, 0.4, "good", [0.92, 0.99]),
    share(8, 0.05, "bad", [0.9, 1]),
    shares([20, 0.5], [20, 0.3], "good", [0.93, 0.98]),
    shares([6, 0.9], [6, 0.2], "bad", [0.9, 1]),
    falseDifference,
    same(15, 15, 5, 5, "good"),
    same(6, 18, 9, 3, "bad"),
    // Quick ones, so that chance can be kept small.
  ].map((scenario) => ({ ...scenario, runs: 10_000 })),
};
