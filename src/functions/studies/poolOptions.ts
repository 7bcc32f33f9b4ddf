import { readConfidence, readWord } from "../settings";
import type { Given } from "../typed";
import { IntervalChoice, PoolMethodChoice } from "./choices";

/** How studies are to be pooled, as cells. */
export type PoolSettings = Given<never, "method" | "interval" | "confidence">;

export const readPoolOptions = ({ method, interval, confidence }: PoolSettings) => ({
  method: readWord(method, "method", PoolMethodChoice, PoolMethodChoice.reml),
  interval: readWord(interval, "interval", IntervalChoice, IntervalChoice.t),
  confidence: readConfidence(confidence),
});
