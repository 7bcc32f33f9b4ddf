/**
 * @customenum {string}
 */
export enum PlanPart {
  /** The block's name, or its number. */
  block = "block",
  /** The week, counted on through the blocks. */
  week = "week",
  /** Sets that week. */
  sets = "sets",
  /** Lower end of the rep range. */
  repsLow = "reps low",
  /** Upper end of the rep range. */
  repsHigh = "reps high",
  /** Reps in reserve that week. */
  reserve = "reserve",
  /** Fraction of 1RM, before the load is rounded. */
  percent = "percent",
  /** The load for the middle of the rep range at that reserve. */
  load = "load",
  /** Sets × middle reps × load. */
  volumeLoad = "volume load",
}
