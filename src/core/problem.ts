/** The input cannot be right, whatever the data: a load below zero, more reps than the equation reaches. */
export class BadInput extends Error {}

/** The input may be right, but there is no answer in it: too little data, or no solution. */
export class NoAnswer extends Error {}

/** A value that does not exist for this data (an interval from one athlete), and why. */
export interface Absent {
  readonly absent: string;
}
