/**
 * The words that an argument may be, for arguments that several functions share. Excel offers them while a
 * formula is typed. Which parts a single function has stands beside that function.
 *
 * @customenum {string}
 */
export enum EquationChoice {
  /** Epley 1985: 1 / (1 + t/30). The usual one. */
  epley = "epley",
  /** Brzycki 1993: (37 − t) / 36, up to 15 reps to failure. */
  brzycki = "brzycki",
  /** Lander 1985: (101.3 − 2.67123 t) / 100, up to 15 reps to failure. */
  lander = "lander",
  /** Lombardi 1989: t to the power of −0.10. */
  lombardi = "lombardi",
  /** Mayhew et al. 1992: (52.2 + 41.9 e^(−0.055 t)) / 100. */
  mayhew = "mayhew",
  /** O'Conner et al. 1989: 1 / (1 + 0.025 t). */
  oconner = "oconner",
  /** Wathan 1994: (48.8 + 53.8 e^(−0.075 t)) / 100. */
  wathan = "wathan",
}

/**
 * @customenum {string}
 */
export enum ScaleChoice {
  /** Headings are reps in reserve. The usual one. */
  reserve = "reserve",
  /** Headings are RPE, 10 − reserve. */
  rpe = "rpe",
}

/**
 * @customenum {string}
 */
export enum DirectionChoice {
  /** To the nearest multiple, an exact tie down. The usual one. */
  nearest = "nearest",
  /** To the multiple at or below. */
  down = "down",
  /** To the multiple at or above. */
  up = "up",
}
