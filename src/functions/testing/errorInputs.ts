import { required, setting } from "../../cells";
import * as quantities from "../quantities";
import { confidenceSetting } from "../settings";

/** A typical error, and what is made of it. */
export function errorInputs(typicalError: unknown, confidence: unknown, df: unknown) {
  return {
    typicalError: required(
      typicalError,
      quantities.above0("typicalError", "a typical error above 0"),
    ),
    confidence: confidenceSetting(confidence),
    df: setting(df, quantities.degreesOfFreedom(), undefined),
  };
}
