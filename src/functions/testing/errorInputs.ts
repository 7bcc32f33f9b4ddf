import { required, setting } from "../../cells";
import * as quantities from "../quantities";
import { confidenceSetting } from "../settings";
import type { Given } from "../typed";

/** A typical error, how sure to be, and how well the error itself is known: cells, as they are given. */
export type ErrorCells = Given<"typicalError", "confidence" | "df">;

/** A typical error, and what is made of it. */
export function errorInputs({ typicalError, confidence, df }: ErrorCells) {
  return {
    typicalError: required(
      typicalError,
      quantities.above0("typicalError", "a typical error above 0"),
    ),
    confidence: confidenceSetting(confidence),
    df: setting(df, quantities.degreesOfFreedom(), undefined),
  };
}
