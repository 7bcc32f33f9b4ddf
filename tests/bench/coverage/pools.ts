import { doseResponse, effectsAtDoses } from "../../../src/core/studies/doseResponse";
import { leaveOneOut } from "../../../src/core/studies/leaveOneOut";
import { onePerStudy } from "../../../src/core/studies/onePerStudy";
import { pooledMean } from "../../../src/core/studies/pooledMean";
import { poolStudies } from "../../../src/core/studies/poolStudies";
import { worthChanging } from "../../../src/core/studies/worthChanging";
import type { Draws } from "./draws";
import { holds } from "./holds";
import type { Scenario } from "./scenario";

/** The mean effect of all invented studies, in standard deviations. */
const MEAN = 0.3;

/** The standard error of a study of two groups of 8 to 40. */
const usualError = (draws: Draws) => Math.sqrt(2 / draws.whole(8, 40));

/** Studies whose true effects differ by an SD of `spread`, measured with known errors. */
function drawStudies(draws: Draws, count: number, spread: number, errorOf = usualError) {
  const standardErrors = draws.times(count, () => errorOf(draws));
  const truths = draws.times(count, () => draws.normal(MEAN, spread));
  const effects = truths.map((truth, i) => draws.normal(truth, standardErrors[i]));
  return { effects, standardErrors, truths };
}

type Band = Scenario["band"];

/** The mean's interval. Here and below the mean is asked for alone, without the prediction that is not looked at. */
const pooled = (
  count: number,
  spread: number,
  kind: Scenario["case"],
  band: Band,
  interval: "t" | "t unheld" | "z" = "t",
): Scenario => ({
  function: "POOLSTUDIES",
  event: `"${interval}" interval holds the mean effect`,
  truth: `${count} studies, true effects differ by an SD of ${spread}`,
  case: kind,
  promised: "95%",
  band,
  run: (draws) => {
    const { effects, standardErrors } = drawStudies(draws, count, spread);
    return holds(pooledMean(effects, standardErrors, { interval }), MEAN);
  },
});

/** The mean's interval where the studies agree better than their own errors let one expect. */
const byLuck = (interval: "t" | "t unheld", count: number, band: Band): Scenario => ({
  function: "POOLSTUDIES",
  event: `"${interval}" interval holds the mean effect, where the studies agree by luck`,
  truth: `${count} studies, true effects differ by an SD of 0.3`,
  case: "bad",
  promised: "95%",
  band,
  runs: 4000,
  shortRuns: 600,
  run: (draws) => {
    const { effects, standardErrors } = drawStudies(draws, count, 0.3);
    const errorOf = (how: typeof interval | "z") =>
      pooledMean(effects, standardErrors, { interval: how }).standardError as number;
    if (errorOf("t unheld") >= errorOf("z")) return [];
    return holds(pooledMean(effects, standardErrors, { interval }), MEAN);
  },
});

/** One large study among small ones. */
const oneLarge: Scenario = {
  function: "POOLSTUDIES",
  event: '"t" interval holds the mean effect',
  truth: "6 studies, one five times as precise as the others, true effects differ by an SD of 0.3",
  case: "bad",
  promised: "95%",
  band: [0.85, 0.95],
  run: (draws) => {
    let first = true;
    const { effects, standardErrors } = drawStudies(draws, 6, 0.3, () => {
      const error = first ? 0.08 : 0.4;
      first = false;
      return error;
    });
    return holds(pooledMean(effects, standardErrors), MEAN);
  },
};

/** The prediction of one more study's true effect. */
const predicted = (count: number, spread: number, kind: Scenario["case"]): Scenario => ({
  function: "POOLSTUDIES",
  event: "prediction holds the true effect of one more study",
  truth: `${count} studies, true effects differ by an SD of ${spread}`,
  case: kind,
  promised: "95%",
  band: [0.935, 1],
  // About one estimate of the spread it would hold in 88% with ten studies.
  shortRuns: 1000,
  run: (draws) => {
    const { effects, standardErrors } = drawStudies(draws, count, spread);
    const { predictLow: low, predictHigh: high } = poolStudies(effects, standardErrors);
    return holds({ low, high }, draws.normal(MEAN, spread));
  },
});

/** Six studies of which three report three effects each, measured on the same athletes. */
const severalEffects = (named: boolean, band: Band): Scenario => ({
  function: "POOLSTUDIES",
  event: `"t" interval holds the mean effect, ${named ? "study named" : "each effect taken for a study"}`,
  truth:
    "3 of 6 studies report 3 effects each (correlated by 0.5), true effects differ by an SD of 0.2",
  case: named ? "good" : "bad",
  promised: named ? "95%" : "nothing: name the studies",
  band,
  run: (draws) => {
    const effects: number[] = [];
    const standardErrors: number[] = [];
    const labels: string[] = [];
    draws.times(6, (study) => {
      const truth = draws.normal(MEAN, 0.2);
      const error = usualError(draws);
      const common = draws.normal();
      draws.times(study < 3 ? 3 : 1, () => {
        effects.push(truth + error * Math.SQRT1_2 * (common + draws.normal()));
        standardErrors.push(error);
        labels.push(`study ${study}`);
      });
    });
    const rows = named ? onePerStudy(effects, standardErrors, labels) : { effects, standardErrors };
    return holds(pooledMean(rows.effects, rows.standardErrors), MEAN);
  },
});

const withoutOne: Scenario = {
  function: "LEAVEONEOUT",
  event: "each row's interval holds the mean effect",
  truth: "6 studies, true effects differ by an SD of 0.3",
  case: "good",
  promised: "95%",
  band: [0.935, 1],
  run: (draws) => {
    const { effects, standardErrors } = drawStudies(draws, 6, 0.3);
    return leaveOneOut(effects, standardErrors).map((row) => holds(row, MEAN));
  },
};

/** Studies along a dose of 2 to 20, true effects of one dose differing by an SD of `spread`. */
function drawDoses(draws: Draws, count: number, spread: number, response: Response) {
  const doses = draws.times(count, () => draws.whole(2, 20));
  const standardErrors = draws.times(count, () => usualError(draws));
  const effects = doses.map((dose, i) =>
    draws.normal(response(dose), Math.hypot(spread, standardErrors[i]!)),
  );
  return { doses, effects, standardErrors };
}

type Response = (dose: number) => number;
const straight: Response = (dose) => 0.03 * dose;
/** Levels off: three quarters of the rise in the first half. */
const levelling: Response = (dose) => 0.6 * (1 - Math.exp(-dose / 7));

const slope = (count: number, interval: "t" | "t unheld", band: Band): Scenario => ({
  function: "DOSERESPONSE",
  event: `"${interval}" interval holds the slope`,
  truth: `${count} studies on a straight line, true effects of one dose differ by an SD of 0.3`,
  case: "good",
  promised: "95%",
  band,
  run: (draws) => {
    const { doses, effects, standardErrors } = drawDoses(draws, count, 0.3, straight);
    if (new Set(doses).size < 2) return [];
    return holds(doseResponse(doses, effects, standardErrors, { interval }), 0.03);
  },
});

const atDose = (inside: boolean, response: Response, band: Band): Scenario => ({
  function: "DOSERESPONSE",
  event: `interval at a dose ${inside ? "inside" : "twice the highest"} holds the effect there`,
  truth: `20 studies on ${response === straight ? "a straight line" : "a curve that levels off"}, true effects of one dose differ by an SD of 0.1`,
  case: response === straight ? "good" : "bad",
  promised: inside ? "95%" : 'nothing: the column inside says "no"',
  band,
  run: (draws) => {
    const { doses, effects, standardErrors } = drawDoses(draws, 20, 0.1, response);
    const dose = inside ? draws.whole(Math.min(...doses), Math.max(...doses)) : 40;
    const [estimate] = effectsAtDoses(doses, effects, standardErrors, [dose]);
    return holds(estimate!, response(dose));
  },
});

/** A squad of spread 1, so that gains are effects. */
const SQUAD = { sd: 1, smallest: 0.1 };

function drawDecision(draws: Draws, earlier: number, spread: number) {
  const all = drawStudies(draws, earlier + 1, spread);
  const answer = worthChanging(
    {
      effects: all.effects.slice(0, earlier),
      standardErrors: all.standardErrors.slice(0, earlier),
    },
    { effect: all.effects[earlier]!, standardError: all.standardErrors[earlier]! },
    SQUAD,
  );
  return { answer, newTruth: all.truths[earlier]!, squadTruth: draws.normal(MEAN, spread) };
}

const decision = (
  what: "before" | "shrunk" | "gain",
  earlier: number,
  spread: number,
  kind: Scenario["case"],
): Scenario => ({
  function: "WORTHCHANGING",
  event: {
    before: "prediction from the earlier studies holds one more's true effect",
    shrunk: "shrunk interval holds the new study's true effect",
    gain: "gain's interval holds the squad's true gain",
  }[what],
  truth: `${earlier} earlier studies, true effects differ by an SD of ${spread}`,
  case: kind,
  promised: "95%",
  band: [0.925, 1],
  run: (draws) => {
    const { answer, newTruth, squadTruth } = drawDecision(draws, earlier, spread);
    const { beforeLow, beforeHigh, shrunkLow, shrunkHigh, gainLow, gainHigh } = answer;
    if (what === "before") return holds({ low: beforeLow, high: beforeHigh }, newTruth);
    if (what === "shrunk") return holds({ low: shrunkLow, high: shrunkHigh }, newTruth);
    return holds({ low: gainLow, high: gainHigh }, squadTruth);
  },
});

/** How good a "change" turns out, over truths as different as studies of training are. */
const change = (earlier: number): Scenario => ({
  function: "WORTHCHANGING",
  event: '"change" is followed by a true gain above the smallest',
  truth: `${earlier} earlier studies; mean effects differ between questions by an SD of 0.5, true effects of one by 0 to 0.5`,
  case: "good",
  promised: "80% or more",
  band: [0.8, 1],
  run: (draws) => {
    const middle = draws.normal(0, 0.5) - MEAN;
    const spread = 0.5 * draws.uniform();
    const all = drawStudies(draws, earlier + 1, spread);
    const effects = all.effects.map((effect) => effect + middle);
    const { reading } = worthChanging(
      {
        effects: effects.slice(0, earlier),
        standardErrors: all.standardErrors.slice(0, earlier),
      },
      { effect: effects[earlier]!, standardError: all.standardErrors[earlier]! },
      SQUAD,
    );
    if (reading !== "change") return [];
    return draws.normal(MEAN + middle, spread) > SQUAD.smallest;
  },
});

export const pools: readonly Scenario[] = [
  // Without the floor the first one would hold in 94%, and so would the slope of four.
  pooled(3, 0.3, "good", [0.98, 1]),
  pooled(5, 0.3, "good", [0.935, 1]),
  pooled(10, 0.3, "good", [0.935, 1]),
  pooled(5, 0, "good", [0.95, 1]),
  byLuck("t", 3, [0.98, 1]),
  byLuck("t unheld", 3, [0.85, 0.95]),
  byLuck("t", 5, [0.94, 1]),
  byLuck("t unheld", 5, [0.85, 0.95]),
  oneLarge,
  pooled(5, 0.3, "bad", [0.82, 0.94], "z"),
  predicted(3, 0.1, "good"),
  predicted(5, 0.3, "good"),
  predicted(10, 0.3, "good"),
  predicted(3, 0.6, "bad"),
  predicted(5, 0.6, "bad"),
  severalEffects(true, [0.935, 1]),
  severalEffects(false, [0.7, 0.9]),
  withoutOne,
  slope(4, "t", [0.98, 1]),
  slope(10, "t", [0.93, 1]),
  slope(10, "t unheld", [0.9, 0.97]),
  atDose(true, straight, [0.93, 1]),
  atDose(true, levelling, [0.85, 1]),
  atDose(false, levelling, [0, 0.85]),
  decision("before", 2, 0.3, "good"),
  decision("before", 5, 0.3, "good"),
  decision("shrunk", 2, 0.3, "good"),
  decision("shrunk", 5, 0.1, "good"),
  decision("shrunk", 5, 0.5, "bad"),
  decision("gain", 2, 0.5, "bad"),
  decision("gain", 5, 0.3, "good"),
  decision("gain", 5, 0.5, "bad"),
  change(3),
  change(8),
];
