import { table } from "../../cells";
import { leaveOneOut as withoutEach } from "../../core/studies/leaveOneOut";
import { typed, type Given } from "../typed";
import type { IntervalChoice, PoolMethodChoice } from "./choices";
import { readPoolOptions, type PoolSettings } from "./poolOptions";
import { readStudies } from "./readStudies";

/**
 * Does the answer hang on one study? Pools the studies again without each of them in turn: a row a study, with what the others say.
 *
 * @customfunction LEAVEONEOUT
 * @param effects {@phrase studyEffects}
 * @param standardErrors {@phrase standardErrors}
 * @param [names] Their names, in the same rows; numbers from 1 if omitted.
 * @param [method] {@phrase poolMethod}
 * @param [interval] {@phrase poolInterval}
 * @param [confidence] {@phrase confidence}
 * @returns A table: left out, estimate, low, high, p. Where two studies are left of which one goes, only "z" and "fixed" have an interval.
 * @errors #N/A under 2 studies; #VALUE! naming the row for a bad cell.
 * @example =SPARE.LEAVEONEOUT({0.31;0.12;0.55;0.2;0.43}, {0.15;0.22;0.3;0.12;0.25})
 * @example =SPARE.LEAVEONEOUT(B2:B20, C2:C20, A2:A20)
 * @source Viechtbauer and Cheung 2010, Res Synth Methods 1:112-125.
 */
export function leaveOneOut(
  effects: unknown[][],
  standardErrors: unknown[][],
  names?: unknown[][],
  method?: PoolMethodChoice[][],
  interval?: IntervalChoice[][],
  confidence?: unknown[][],
): unknown[][] {
  const cells = { effects, standardErrors, names, method, interval, confidence };
  return table(
    ["left out", "estimate", "low", "high", "p"],
    computeLeaveOneOut(cells).map(({ name, estimate, low, high, p }) => [
      name,
      estimate,
      low,
      high,
      p,
    ]),
  );
}

/** The typed half of LEAVEONEOUT: the pool without each study, under the study's name. */
export const computeLeaveOneOut = typed(
  (cells: Given<"effects" | "standardErrors", "names"> & PoolSettings) => {
    const { columns, labels } = readStudies(
      cells.effects,
      cells.standardErrors,
      {},
      { names: { given: cells.names, name: "names", canBeBlank: true } },
    );
    const { effects, standardErrors } = columns;
    return withoutEach(effects, standardErrors, readPoolOptions(cells)).map((pool) => ({
      ...pool,
      name: labels.names?.[pool.leftOut] ?? pool.leftOut + 1,
    }));
  },
);
