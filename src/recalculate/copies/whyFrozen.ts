/* What keeps a copy from going on with one of our functions by itself. */

const SEARCH = "it searches among many possibilities";
const POWER = "it searches by a distribution that no spreadsheet has, the noncentral t";
const FIT = "it fits a model in many steps";
const AVERAGE = "it averages over all that is not known, in many steps";

const REASONS: Readonly<Record<string, string>> = {
  PLATES: SEARCH,
  BALANCEDGROUPS: SEARCH,
  SAMPLESIZE: POWER,
  DETECTABLE: POWER,
  STRENGTHTREND: FIT,
  SQUADTREND: FIT,
  RISECOMPARE: FIT,
  POOLSTUDIES: FIT,
  DOSERESPONSE: FIT,
  LEAVEONEOUT: FIT,
  SETCHANCE: AVERAGE,
  SQUADCHANGE: AVERAGE,
  TESTTREND: AVERAGE,
  WORTHCHANGING: AVERAGE,
  VERSION: "it says which release of the add-in worked the copy out",
};

/** Why one of our functions is a value in a copy, in a clause that goes on from its name. */
export const whyFrozen = (id: string): string => REASONS[id] ?? "this release does not have it";
