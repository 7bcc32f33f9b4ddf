import { last } from "../../last";
import {
  filterRegression,
  levelRegression,
  smoothRegression,
  type LevelRegression,
  type LevelVariances,
  type Observation,
  type SlopePrior,
} from "../../statistics/levelRegression";
import type { Equation } from "../equations";
import { dayOf, type LoggedSet, type TrendOptions, type UsedSets } from "./usedSets";

/** A straight rise or fall of ln 1RM, over all days or some of them. */
export interface Drift {
  /** How many days of it have gone by on each day. */
  readonly elapsed: readonly number[];
  /** How large it may be a day: the standard deviation, its mean being 0. */
  readonly sd: number;
}

/** No lifter gains 0.1% a day for long, nor 6% without a break. */
export const driftSd = (span: number) => Math.min(0.001, 0.06 / span);

/** Each rep hides what the call is about: a single that was tested is surer, by this factor. */
const SURER_SINGLE = 3;
/** How far a lifter's own bias may lie from the one given, in standard deviations of one call. */
const BIAS_SHARE = 1 / 2;
/** While the curve is looked for, the wanderings are taken as these. */
const MIDDLING: LevelVariances = { walk: 0.003 ** 2, noise: 0.02 ** 2 };
/** A fourth round moves today's maximum by less than a millionth. */
const ROUNDS = 3;

/** A set as the model sees it. */
interface ModelSet {
  readonly place: number;
  readonly load: number;
  /** Reps to failure as called, with the bias that is known. */
  readonly called: number;
  /** A single with nothing left is the maximum, whatever the curve and the bias. */
  readonly tested: boolean;
}

/** How the curve is thought to lie while it is looked for. */
interface Guess {
  /** ln 1RM on each day. */
  readonly levels: ArrayLike<number>;
  /** ln k, the lifter's curve factor. */
  readonly curve: number;
}

/**
 * Turns the sets of a log into a linear model of ln 1RM.
 *
 * A set says ln load = ln 1RM + the day's form + ln f(1 + (t − 1)/k). The reps to failure t are the reps done and
 * called, up to the bias of all calls and the error of this one; k is how many more reps this lifter gets from any
 * load than the equation says. ln 1RM drifts and wanders. Only f is not linear, so it is replaced by its tangent,
 * at the reps that the *load* allows and not at those called: with a tangent at the call the error of the call would
 * stand on both sides, and the curve could not be learnt. The levels that this takes are found in rounds.
 */
export function trendModel(
  used: UsedSets,
  drifts: readonly Drift[],
  options: TrendOptions,
): LevelRegression {
  const { equation, reserveBias = 0, reserveSd = 1, curveSd = equation.curveSd } = options;
  const places = new Map(used.days.map((day, place) => [day, place]));
  const sets = used.sets.map((set) => modelSet(set, places.get(dayOf(set))!, reserveBias));
  const biasSd = BIAS_SHARE * reserveSd;
  const spread = { reserveSd, biasSd, curveSd };
  const slopes: SlopePrior[] = [
    ...drifts.map(({ sd }) => ({ sd, inLevel: true })),
    { sd: biasSd, inLevel: false },
    ...(curveSd > 0 ? [{ sd: curveSd, inLevel: false }] : []),
  ];

  const modelAt = (guess: Guess) => {
    const observations = sets.map((set): Observation => {
      const reps = repsTheLoadAllows(set, guess, equation);
      const { value, variance, curve, bias } = tangent(set, reps, guess.curve, spread, equation);
      const lean = drifts.map(({ elapsed }) => elapsed[set.place]!);
      const columns = [...lean, bias, ...(curveSd > 0 ? [curve] : [])];
      return { place: set.place, value, columns, variance };
    });
    return levelRegression(used.days, observations, slopes);
  };

  let guess = firstGuess(sets, used.days.length, spread, equation);
  for (let round = 0; round < ROUNDS; round++) {
    const model = modelAt(guess);
    const filtered = filterRegression(model, MIDDLING);
    const { level } = smoothRegression(model, MIDDLING, filtered);
    const found = curveSd > 0 ? last(filtered.slopes) : 0;
    guess = {
      levels: used.days.map((_, day) => level(day)),
      curve: Math.max(-2 * curveSd, Math.min(2 * curveSd, found)),
    };
  }
  return modelAt(guess);
}

function modelSet(set: LoggedSet, place: number, bias: number): ModelSet {
  const { load, reps, reserve } = set;
  return {
    place,
    load,
    called: Math.max(1, reps + reserve + bias),
    tested: reps === 1 && reserve === 0,
  };
}

/** What is not known of calls and curve, as standard deviations. */
interface Spread {
  readonly reserveSd: number;
  readonly biasSd: number;
  readonly curveSd: number;
}

/** A set as a straight line: value = ln 1RM + form + curve × ln k + bias × bias of the calls + error. */
interface Tangent {
  readonly value: number;
  readonly variance: number;
  readonly curve: number;
  readonly bias: number;
}

/**
 * The tangent of ln f for one set at `reps`, on the equation's own scale, and at a curve factor. The slope of −ln f,
 * small for a heavy single and large for a light set, says how much a rep of the call weighs.
 */
function tangent(
  set: ModelSet,
  reps: number,
  curve: number,
  { reserveSd }: Spread,
  equation: Equation,
): Tangent {
  if (set.tested) {
    const perRep = steepness(equation, 1);
    const variance = ((perRep * reserveSd) / SURER_SINGLE) ** 2;
    return { value: Math.log(set.load), variance, curve: 0, bias: 0 };
  }
  const steep = steepness(equation, reps);
  const perRep = steep * Math.exp(-curve);
  const perCurve = steep * (reps - 1);
  const ownReps = 1 + (reps - 1) * Math.exp(curve);
  return {
    value:
      Math.log(set.load) -
      Math.log(equation.fraction(reps)) +
      perRep * (set.called - ownReps) +
      perCurve * curve,
    variance: (perRep * reserveSd) ** 2,
    curve: perCurve,
    bias: -perRep,
  };
}

/** By what share the load falls for one more rep: −f′/f. */
const steepness = (equation: Equation, t: number) => -equation.slope(t) / equation.fraction(t);

/** The reps that the set's load allows by the equation, if ln 1RM is as guessed: from 1 to the equation's cap. */
function repsTheLoadAllows(set: ModelSet, { levels }: Guess, equation: Equation): number {
  const fraction = set.load / Math.exp(levels[set.place]!);
  if (fraction >= 1) return 1;
  return fraction <= equation.fraction(equation.cap) ? equation.cap : equation.repsAt(fraction);
}

/** One level for all days, from the calls as they are and the equation as published. */
function firstGuess(
  sets: readonly ModelSet[],
  days: number,
  spread: Spread,
  equation: Equation,
): Guess {
  let weights = 0;
  let weighted = 0;
  for (const set of sets) {
    const { value, variance, curve, bias } = tangent(set, set.called, 0, spread, equation);
    const weight = 1 / (variance + (spread.curveSd * curve) ** 2 + (spread.biasSd * bias) ** 2);
    weights += weight;
    weighted += weight * value;
  }
  return { levels: new Float64Array(days).fill(weighted / weights), curve: 0 };
}
