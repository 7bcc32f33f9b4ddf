import { recorded, required } from "../../cells";
import * as quantities from "../quantities";

/** The three numbers that make a set, as most functions of this family take them. */
export function setInputs(load: unknown, reps: unknown, reserve: unknown) {
  return {
    load: required(load, quantities.load()),
    reps: required(reps, quantities.reps()),
    reserve: recorded(reserve, quantities.reserve(), 0),
  };
}
