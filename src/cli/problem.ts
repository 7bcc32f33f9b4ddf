/** A command line that cannot be followed as it is typed; the message says why in one line. */
export class BadUsage extends Error {
  override name = "BadUsage";
}

/** What was asked for rightly, and cannot be done; the message says why in one line. */
export class Refused extends Error {
  override name = "Refused";
}

/** What a formula over a table came to is one error: its code and message, by the row of the file. */
export class FormulaFailed extends Error {
  override name = "FormulaFailed";
}
