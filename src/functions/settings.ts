import { choice, readOne, setting, type Choices } from "../cells";
import * as quantities from "./quantities";

/** Settings that several functions share, as arguments that lift. */
export const confidenceSetting = (confidence: unknown) =>
  setting(confidence, quantities.confidence(), quantities.USUAL_CONFIDENCE);
export const alphaSetting = (alpha: unknown) =>
  setting(alpha, quantities.confidence("alpha"), quantities.USUAL_ALPHA);
export const powerSetting = (power: unknown) =>
  setting(power, quantities.confidence("power"), quantities.USUAL_POWER);

/** The confidence of a report, which is one value. */
export const readConfidence = (confidence: unknown) => readOne(confidenceSetting(confidence))!;

/** A choice of a report, which is one word. */
export const readWord = <C extends Choices>(
  given: unknown,
  name: string,
  choices: C,
  usual: C[keyof C],
) => readOne(choice(given, name, choices, usual))!;
