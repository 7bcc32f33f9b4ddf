import fc from "fast-check";
import training from "../../../shared/reference/data/training-log.json";
import type { LoggedSet } from "../../../src/core/strength/trend/usedSets";
import { elementAt } from "../../present";

/** The invented log of shared/reference/data/training-log.json. */
export const trainingLog = training.date.map((date, i): LoggedSet => ({
  date,
  load: elementAt(training.load, i),
  reps: elementAt(training.reps, i),
  reserve: elementAt(training.reserve, i),
}));

/** Any short log of one lifter: a maximum near 100, calls to half a rep, some singles, some sets to failure. */
export const anyLog = fc
  .array(
    fc.record({
      gap: fc.integer({ min: 1, max: 12 }),
      sets: fc.array(
        fc.record({
          reps: fc.integer({ min: 1, max: 12 }),
          reserve: fc.integer({ min: 0, max: 8 }).map((halves) => halves / 2),
          off: fc.double({ min: -0.06, max: 0.06, noNaN: true }),
        }),
        { minLength: 1, maxLength: 3 },
      ),
    }),
    { minLength: 6, maxLength: 9 },
  )
  .map((days) => {
    let date = 45_700;
    return days.flatMap(({ gap, sets }) => {
      date += gap;
      return sets.map(({ reps, reserve, off }): LoggedSet => {
        const load = (100 * (1 + off)) / (1 + (reps + reserve - 1) / 30);
        return { date, load: Math.round(load * 10) / 10, reps, reserve };
      });
    });
  });
