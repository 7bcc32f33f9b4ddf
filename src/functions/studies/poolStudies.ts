import { labelIdentity, readOne, report, setting } from "../../cells";
import { onePerStudy } from "../../core/studies/onePerStudy";
import { poolStudies as pool } from "../../core/studies/poolStudies";
import * as quantities from "../quantities";
import { typed, type Given } from "../typed";
import type { PoolMethodChoice, IntervalChoice } from "./choices";
import { readPoolOptions, type PoolSettings } from "./poolOptions";
import { readStudies } from "./readStudies";

/**
 * @customenum {string}
 */
export enum PoolStudiesPart {
  /** How many studies; effects of one study count once. */
  studies = "studies",
  /** The pooled effect. */
  estimate = "estimate",
  /** Its standard error. */
  standardError = "standard error",
  /** Lower end of its interval. */
  low = "low",
  /** Upper end of its interval. */
  high = "high",
  /** Estimate over standard error. */
  statistic = "statistic",
  /** How likely such an estimate is without any effect, two-sided. */
  p = "p",
  /** How much true effects differ between studies, as a standard deviation. */
  betweenStudySd = "between-study sd",
  /** That, squared. */
  betweenStudyVariance = "between-study variance",
  /** The share of the scatter that lies between studies (I squared), a fraction. */
  shareBetweenStudies = "share between studies",
  /** Cochran's Q. */
  q = "q",
  /** The chance of so large a Q from studies that differ by chance alone. */
  qP = "q p",
  /** Lower end of where one more study's true effect would lie. */
  predictLow = "predict low",
  /** Upper end of where one more study's true effect would lie. */
  predictHigh = "predict high",
}

/** Two effects measured on the same athletes go together, nobody knows how much: the middle of the way. */
const USUAL_CORRELATION = 0.5;

/**
 * Pools the effects of several studies into one, and says how much studies differ: the prediction interval is where the next study, or your squad, would lie.
 *
 * @customfunction POOLSTUDIES
 * @param effects {@phrase studyEffects}
 * @param standardErrors {@phrase standardErrors}
 * @param [method] {@phrase poolMethod}
 * @param [interval] {@phrase poolInterval}
 * @param [confidence] {@phrase confidence}
 * @param [study] Which study each effect is from, where studies report several: effects with one name are averaged first, so that no athlete counts twice. A blank name is a study of its own.
 * @param [correlation] How far two effects of one study go together, from 0 to 1; 0.5 if omitted, 0 is a value.
 * @param [part] {@phrase parts estimate}
 * @returns A report of two columns: studies, estimate, standard error, low, high, statistic, p, between-study sd and variance, share between studies, q, q p, predict low, predict high. With 3 to 5 studies the interval is wide on purpose: it is meant to hold. Where one study is several times as precise as the others it holds in 89%, not 95%. The prediction needs 3.
 * @errors #N/A without a study; #VALUE! naming the row for a bad cell.
 * @example =SPARE.POOLSTUDIES({0.31;0.12;0.55;0.2;0.43}, {0.15;0.22;0.3;0.12;0.25})
 * @example =SPARE.POOLSTUDIES({0.31;0.12;0.55;0.2}, {0.15;0.22;0.3;0.12}, , , , {"A";"A";"B";"C"}, 0.7)
 * @source REML: Harville 1977; interval: Hartung and Knapp 2001, held as in Röver, Knapp and Friede 2015; DerSimonian and Laird 1986; prediction: Röver et al. 2021; effects of one study: Borenstein et al. 2009, ch. 24.
 */
export function poolStudies(
  effects: unknown[][],
  standardErrors: unknown[][],
  method?: PoolMethodChoice[][],
  interval?: IntervalChoice[][],
  confidence?: unknown[][],
  study?: unknown[][],
  correlation?: unknown[][],
  part?: PoolStudiesPart[][],
): unknown[][] {
  const cells = { effects, standardErrors, method, interval, confidence, study, correlation };
  return report(PoolStudiesPart, part, computePoolStudies(cells));
}

/** The typed half of POOLSTUDIES. */
export const computePoolStudies = typed(
  (cells: Given<"effects" | "standardErrors", "study" | "correlation"> & PoolSettings) => {
    const { columns, labels } = readStudies(
      cells.effects,
      cells.standardErrors,
      {},
      { study: { given: cells.study, name: "study", canBeBlank: true } },
    );
    const correlation = readOne(
      setting(cells.correlation, quantities.positiveCorrelation(), USUAL_CORRELATION),
    )!;
    const studies = labels.study?.map((name) => (name === null ? undefined : labelIdentity(name)));
    const { effects, standardErrors } = studies
      ? onePerStudy(columns.effects, columns.standardErrors, studies, correlation)
      : columns;
    return pool(effects, standardErrors, readPoolOptions(cells));
  },
);
