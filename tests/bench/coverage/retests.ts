import { changeScore } from "../../../src/core/testing/changeScore";
import { responseShare } from "../../../src/core/testing/responseShare";
import { squadChange } from "../../../src/core/testing/squadChange";
import { standardDeviation } from "../../../src/core/statistics/moments";
import type { Draws } from "./draws";
import { holds } from "./holds";
import type { Scenario } from "./scenario";

/** Tests repeated without and with training between; the true typical error is 2.5 throughout. */
const ERROR = 2.5;
const HOLDS: Scenario["band"] = [0.93, 0.97];

/** A typical error as a reliability study on so many degrees of freedom finds it. */
const foundError = (draws: Draws, df: number) => ERROR * Math.sqrt(draws.chiSquare(df) / df);

/** Two tests of an athlete whose true score changed by so much. */
function pair(draws: Draws, change: number) {
  const before = 100 + ERROR * draws.normal();
  return { before, after: 100 + change + ERROR * draws.normal() };
}

/** One athlete's interval, the error known to come from so few retests or taken as if it were certain. */
const oneAthlete = (df: number, said: boolean, kind: Scenario["case"]): Scenario => ({
  function: "CHANGESCORE",
  event: "interval holds the true change",
  truth: `the typical error from ${df} degrees of freedom, ${said ? "and df says so" : "df left out"}`,
  case: kind,
  promised: "95%",
  band: said ? HOLDS : [0.8, 0.95],
  run: (draws) => {
    const asked = { smallest: 0, confidence: 0.95, df: said ? df : undefined };
    const typicalError = foundError(draws, df);
    return holds(changeScore({ ...pair(draws, 4), typicalError, ...asked }), 4);
  },
});

interface Squad {
  readonly athletes: number;
  /** How far apart the true changes lie, in typical errors. */
  readonly apart: number;
  readonly df?: number;
  readonly case: Scenario["case"];
}

const truthOf = ({ athletes, apart, df }: Squad) => {
  const spread =
    apart === 0 ? " who did not change" : `, true changes spread by ${apart} typical errors`;
  return `${athletes} athletes${spread}${df === undefined ? "" : `, the error from ${df} df`}`;
};

function testSquad(draws: Draws, { athletes, apart, df }: Squad) {
  const mean = apart === 0 ? 0 : 3;
  const truths = draws.times(athletes, () => mean + apart * ERROR * draws.normal());
  const typicalError = df === undefined ? ERROR : foundError(draws, df);
  const test = { typicalError, df, smallest: 0, confidence: 0.95 };
  return {
    truths,
    found: squadChange(
      truths.map((truth) => pair(draws, truth)),
      test,
    ),
  };
}

const squadInterval = (squad: Squad): Scenario => ({
  function: "SQUADCHANGE",
  event: "an athlete's interval holds the true change",
  truth: truthOf(squad),
  case: squad.case,
  promised: "95%",
  band: [0.925, 0.985],
  runs: squad.df === undefined ? 1000 : 300,
  shortRuns: squad.df === undefined ? 100 : 30,
  run: (draws) => {
    const { truths, found } = testSquad(draws, squad);
    return found.map((interval, i) => holds(interval, truths[i]!));
  },
});

const squadAlarm = (squad: Squad): Scenario => ({
  function: "SQUADCHANGE",
  event: "any athlete is read as really changed",
  truth: truthOf(squad),
  case: squad.case,
  promised: "at most 10%",
  band: [0, 0.1],
  runs: squad.df === undefined ? 1000 : 300,
  shortRuns: squad.df === undefined ? 100 : 30,
  run: (draws) =>
    testSquad(draws, squad).found.some(({ reading }) => reading !== "within test error"),
});

/** A squad's spread of changes, summed up and asked for what is more than test error. */
function spreadOf(draws: Draws, trueSd: number) {
  const changes = draws.times(20, () => {
    const { before, after } = pair(draws, 5 + trueSd * draws.normal());
    return after - before;
  });
  return responseShare({
    meanChange: 5,
    sdChange: standardDeviation(changes),
    typicalError: foundError(draws, 19),
    threshold: 4,
    n: 20,
    df: 19,
    confidence: 0.95,
  });
}

const trueSpread: Scenario = {
  function: "RESPONSESHARE",
  event: "true sd low to true sd high holds the true SD",
  truth: "20 athletes, true changes an SD of 4 apart, the error from 19 df",
  case: "good",
  promised: "95%",
  band: [0.93, 0.98],
  run: (draws) => {
    const { trueSdLow, trueSdHigh } = spreadOf(draws, 4);
    return holds({ low: Number(trueSdLow), high: Number(trueSdHigh) }, 4);
  },
};

const spreadAlarm: Scenario = {
  function: "RESPONSESHARE",
  event: "more spread than test error is read",
  truth: "20 athletes who all changed alike, the error from 19 df",
  case: "bad",
  promised: "5%",
  band: [0.03, 0.07],
  run: (draws) => spreadOf(draws, 0).reading === "more spread than test error explains",
};

export const retests: readonly Scenario[] = [
  oneAthlete(9, true, "good"),
  oneAthlete(4, true, "bad"),
  oneAthlete(4, false, "bad"),
  squadInterval({ athletes: 8, apart: 1, case: "good" }),
  squadInterval({ athletes: 3, apart: 3, case: "bad" }),
  squadInterval({ athletes: 6, apart: 1, df: 4, case: "bad" }),
  squadAlarm({ athletes: 20, apart: 0, case: "good" }),
  squadAlarm({ athletes: 12, apart: 0, df: 9, case: "bad" }),
  trueSpread,
  spreadAlarm,
];
