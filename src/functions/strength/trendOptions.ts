import { readOne, setting } from "../../cells";
import type { TrendOptions } from "../../core/strength/trend/usedSets";
import { equationOf } from "../equation";
import * as quantities from "../quantities";
import { readConfidence } from "../settings";
import type { Given } from "../typed";

/** The arguments by which a trend is told how to judge a log. */
export type TrendSetting =
  "reserveBias" | "reserveSd" | "maxReps" | "equation" | "confidence" | "curveSd";

/** The options of every function that follows strength through a log. */
export function readTrendOptions(given: Given<never, TrendSetting>): TrendOptions {
  const equation = readOne(equationOf(given.equation))!;
  return {
    equation,
    reserveBias: readOne(setting(given.reserveBias, quantities.anyNumber("reserveBias"), 0))!,
    reserveSd: readOne(setting(given.reserveSd, quantities.above0("reserveSd"), 1))!,
    maxReps: readOne(setting(given.maxReps, quantities.reps("maxReps"), 12))!,
    confidence: readConfidence(given.confidence),
    curveSd: readOne(setting(given.curveSd, quantities.curveSd(), equation.curveSd))!,
  };
}
