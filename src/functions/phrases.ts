/** How a range of reserves is written so that Excel, which passes a blank cell as 0, tells the two apart. */
const blankSafe = (range: string) => `Write ${range}&"" so that a blank is not read as 0.`;

/**
 * Sentences that the help of several functions shares, so that each stands once. A comment says `{@phrase equation}`,
 * or `{@phrase parts reading}` where the sentence has an example of the function's own; the catalogue puts the
 * sentence there.
 */
export const phrases: Readonly<Record<string, string | ((example: string) => string)>> = {
  confidence: "A fraction between 0 and 1; 0.95 if omitted.",
  equation: 'A published equation, "epley" if omitted, or the lifter\'s own curve constant.',
  increment: "The smallest step of the load, such as 2.5; 0 or omitted for no rounding.",

  blankSafe,
  reserve: "Reps in reserve, 0 or more; 0 if omitted, not recorded if blank.",
  loadDone: "The load of the set, above 0, in kilograms or pounds.",

  repsListed: "The reps to list, a row or a column; 1 to 12 if omitted.",
  reservesListed: "The reserves to list, a row or a column; 0 to 4 if omitted.",
  scaleListed: '"reserve" if omitted, or "rpe" for headings of 10 − reserve.',
  loadOfDay:
    'The load of each day, 0 or more. Every cell is a day; blank, 0 and text such as "rest" are rest days, so select the week and not the whole column.',
  blocks:
    "A row a block: [name], weeks, sets first, sets last, reps low, reps high, reserve first, reserve last.",

  repsDone: "The reps done, above 0.",
  dayOfSet: "The day of each set.",
  loadOfSet: "The load of each set, above 0, in one unit.",
  reserveOfSet: `Reps in reserve, 0 or more; 0 if omitted; a set without one is left out. ${blankSafe("D2:D50")}`,

  repsOfRow: "The reps of each row, above 0; a row without reps is not there.",
  setsOfRow: "How many sets the row stands for; 1 if omitted or blank.",
  countBy: "One or more columns to count by, such as lifter and week, beside the same rows.",
  within: "The most reps in reserve that count as close, 0 or more; 4 if omitted.",

  reserveBias:
    "How many reps more the lifter has left than they say, on average (the bias of RESERVECHECK); 0 if omitted.",
  reserveSd: "Spread of those calls in reps (the sd of RESERVECHECK), above 0; 1 if omitted.",
  mostRepsDone: "Sets of more reps done than this are left out; 12 if omitted.",
  curveSd:
    "How far the lifter's own curve may lie from the equation, as a fraction from 0 (known exactly) to 1; " +
    "0.25 if omitted, 0.1 with an own constant.",

  groupSize: (group) => `Athletes in group ${group}, from 2.`,
  scoresBefore: "Scores before, a row an athlete; 0 counts as blank.",
  scoresAfter: "Scores after, the same athletes in the same rows.",
  firstGroup: "Which label is group A; the first to appear if omitted.",
  smallest: "The smallest change that matters, 0 or more; 0 if omitted.",
  typicalError: "The typical error of the test, above 0, in the same unit.",
  errorDf:
    'Degrees of freedom of the typical error, the "df" of RELIABILITY; the error is taken as known exactly if omitted, which an error from few athletes is not.',
  power: "The chance to find it, a fraction; 0.8 if omitted.",
  falseAlarm: "The chance of a false alarm, two-sided, a fraction; 0.05 if omitted.",

  itsStandardError: "Its standard error, above 0.",
  studyEffects: "The studies' effects, a row a study; 0 is a value.",
  standardErrors: "Their standard errors, above 0; a row without one is not there.",
  poolMethod: '"reml" if omitted, "dl" or "fixed" (one common effect, for studies that are alike).',
  poolInterval:
    '"t" if omitted, "t unheld" or "z". Held, it is never built on less scatter than the studies\' own errors ' +
    'make. "fixed" is always "z".',
  intervalLow: "Lower end of the interval; 0 is a value.",
  intervalHigh: "Upper end of the interval, above low.",
  intervalConfidence: "The interval's confidence, a fraction; 0.95 if omitted.",

  // A report on columns, a report on single values, and a row of values.
  parts: (label) => `One label, such as "${label}", or a range of labels, for those values alone.`,
  onePart: (label) => `One label, such as "${label}"; with it the inputs may be ranges.`,
  partOfRow: (label) => `One label, such as "${label}", for that one value in one cell.`,
};
