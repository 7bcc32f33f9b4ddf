import { readOne, setting } from "../../cells";
import * as quantities from "../quantities";

/** Reps from failure at which a set still counts as close, where the coach gives no other; common practice. */
const USUAL_WITHIN = 4;

/** Up to which reserve a set counts as close to failure. */
export const readWithin = (within: unknown) =>
  readOne(setting(within, quantities.reserve("within"), USUAL_WITHIN))!;
