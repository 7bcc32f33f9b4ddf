import { drawsFor, type Draws } from "./draws";

/**
 * One invented truth, and one question about the answers a function gives to data drawn from it: does the
 * interval hold the truth, does the reading sound a false alarm.
 */
export interface Scenario {
  /** The cell function: POOLSTUDIES. */
  readonly function: string;
  /** What its answer does or does not: "interval holds the mean effect". */
  readonly event: string;
  /** The truth behind the data, in words: "5 studies, true effects differ by an SD of 0.3". */
  readonly truth: string;
  /** Whether the data are as the function supposes, or as it has to fear. */
  readonly case: "good" | "bad";
  /** How often that event is promised to happen: "95%", "at most 5%". */
  readonly promised: string;
  /** Between which shares the measured one must lie, but for chance. */
  readonly band: readonly [least: number, most: number];
  /**
   * Draws the data of one squad, log or set of studies, asks the function, and says whether the event
   * happened: once, several times (one for each athlete), or not at all where the question did not arise.
   */
  readonly run: (draws: Draws) => boolean | readonly boolean[];
  /** Runs of the full measurement: 2,000 unless given. */
  readonly runs?: number;
  /** Runs of the short form in `tests/simulated/`: 300 unless given. */
  readonly shortRuns?: number;
}

/** A heading of docs/accuracy.md and the scenarios of its table. */
export interface Family {
  /** The name of its table: `<!-- coverage: studies -->` marks the place. */
  readonly name: string;
  readonly scenarios: readonly Scenario[];
}

const RUNS = 2000;
const SHORT_RUNS = 300;

export const fullRuns = ({ runs = RUNS }: Scenario) => runs;
export const shortRuns = ({ shortRuns = SHORT_RUNS }: Scenario) => shortRuns;

/** The words that tell a scenario from all others; its random numbers hang on them. */
export const nameOf = (scenario: Scenario) =>
  `${scenario.function}: ${scenario.event}; ${scenario.truth}`;

export interface Measured {
  readonly share: number;
  /** How far chance alone may have moved the share: its standard error. */
  readonly standardError: number;
  /** How many yeses and noes the share is made of. */
  readonly count: number;
}

/** How often the event happened. */
export function measure(scenario: Scenario, runs: number): Measured {
  const draws = drawsFor(nameOf(scenario));
  const answers = draws.times(runs, () => [scenario.run(draws)].flat());
  const count = answers.reduce((sum, answer) => sum + answer.length, 0);
  const happened = (answer: readonly boolean[]) => answer.filter(Boolean).length;
  const share = answers.reduce((sum, answer) => sum + happened(answer), 0) / count;
  // Athletes of one squad share its luck, so that chance is judged by whole runs.
  const squares = answers.reduce(
    (sum, answer) => sum + (happened(answer) - share * answer.length) ** 2,
    0,
  );
  return { share, count, standardError: Math.sqrt(squares) / count };
}

/** Chance alone moves a share this many standard errors once in 400 times. */
const CHANCE = 3;

/** Whether a measured share lies outside its band by more than chance. */
export function outside({ band: [least, most] }: Scenario, measured: Measured): boolean {
  const { share, standardError, count } = measured;
  if (!(count > 0)) return true;
  const edge = share < least ? least : most;
  const error = Math.max(standardError, Math.sqrt((edge * (1 - edge)) / count));
  return share < least - CHANCE * error || share > most + CHANCE * error;
}
