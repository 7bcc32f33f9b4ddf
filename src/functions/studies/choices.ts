/**
 * @customenum {string}
 */
export enum PoolMethodChoice {
  /** Random effects, restricted maximum likelihood. The usual one. */
  reml = "reml",
  /** Random effects, DerSimonian and Laird's moments. */
  dl = "dl",
  /** One common effect, no spread between studies. */
  fixed = "fixed",
}

/**
 * @customenum {string}
 */
export enum IntervalChoice {
  /** Student's t, the studies' actual scatter, never below what their own errors lead one to expect. The usual one. */
  t = "t",
  /** The same without that floor (Hartung and Knapp): too narrow where studies agree by luck. */
  tUnheld = "t unheld",
  /** Normal, the model's own standard error. */
  z = "z",
}
