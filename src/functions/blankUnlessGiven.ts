/** A required column that a call leaves out is a blank one. */
export const blankUnlessGiven = (argument: unknown) => argument ?? "";
