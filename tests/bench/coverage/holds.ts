import type { Absent } from "../../../src/core/problem";

interface Interval {
  readonly low: number | Absent;
  readonly high: number | Absent;
}

/** Whether an interval is there and holds the truth. */
export const holds = ({ low, high }: Interval, truth: number): boolean =>
  typeof low === "number" && typeof high === "number" && low <= truth && truth <= high;
