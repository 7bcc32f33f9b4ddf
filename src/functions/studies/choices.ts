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
  /** Student's t, Hartung and Knapp's standard error. The usual one. */
  t = "t",
  /** Normal, the model's own standard error. */
  z = "z",
}
