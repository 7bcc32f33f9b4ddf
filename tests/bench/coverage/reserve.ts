import { reserveCheck } from "../../../src/core/reserve/reserveCheck";
import { squadReserveCheck } from "../../../src/core/reserve/squadReserveCheck";
import type { Draws } from "./draws";
import { holds } from "./holds";
import type { Family, Scenario } from "./scenario";

/** Calls are off by a rep on average, and by an SD of 1.2 reps from one set to the next. */
const BIAS = 1;
const WITHIN = 1.2;

/** Errors of one lifter's calls, in whole reps as they are called and counted. */
const calls = (draws: Draws, sets: number, own: number) =>
  draws.times(sets, () => Math.round(draws.normal(own, WITHIN)));

const oneLifter = (sets: number): Scenario => ({
  function: "RESERVECHECK",
  event: "interval holds the bias",
  truth: `one lifter, ${sets} sets`,
  case: "good",
  promised: "95%",
  band: [0.93, 0.97],
  run: (draws) => holds(reserveCheck(calls(draws, sets, BIAS), 0.95), BIAS),
});

/** A squad whose lifters differ in how they call. */
const squad = (draws: Draws, lifters: number, sets: number) =>
  draws.times(lifters, () => calls(draws, sets, draws.normal(BIAS, 0.8)));

const bias = (lifters: number, sets: number, named: boolean, band: Scenario["band"]): Scenario => ({
  function: "RESERVECHECK",
  event: `interval holds the bias of such lifters, lifters ${named ? "named" : "not named"}`,
  truth: `${lifters} lifters who differ by an SD of 0.8 reps, ${sets} sets each`,
  case: named ? "good" : "bad",
  promised: named ? "95%" : "nothing: name the lifters",
  band,
  run: (draws) => {
    const byLifter = squad(draws, lifters, sets);
    const answer = named ? squadReserveCheck(byLifter, 0.95) : reserveCheck(byLifter.flat(), 0.95);
    return holds(answer, BIAS);
  },
});

const agreement = (lifters: number, sets: number, band: Scenario["band"]): Scenario => ({
  function: "RESERVECHECK",
  event: "limits of agreement hold the next call of such a lifter",
  truth: `${lifters} lifters who differ by an SD of 0.8 reps, ${sets} sets each`,
  case: lifters * sets >= 40 ? "good" : "bad",
  promised: "about 95%",
  band,
  run: (draws) => {
    const { agreeLow, agreeHigh } = squadReserveCheck(squad(draws, lifters, sets), 0.95);
    const next = draws.normal(draws.normal(BIAS, 0.8), WITHIN);
    return holds({ low: agreeLow, high: agreeHigh }, next);
  },
});

export const reserve: Family = {
  name: "reserve",
  scenarios: [
    oneLifter(6),
    oneLifter(20),
    bias(8, 5, true, [0.93, 0.97]),
    bias(4, 10, true, [0.92, 0.98]),
    bias(8, 5, false, [0.6, 0.9]),
    agreement(8, 8, [0.92, 0.97]),
    agreement(4, 3, [0.84, 0.95]),
  ],
};
