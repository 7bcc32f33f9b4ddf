import { expectPositive } from "../checks";
import { roundToMultiple } from "../load/round";
import { BadInput, NoAnswer } from "../problem";
import { atLeast } from "../statistics/compare";
import { normalQuantile, requireProbability } from "../statistics/distributions";
import { isFound } from "./power";

/** Groups larger than this are no answer to a coach. */
const MOST = 1e7;

/** Two groups that are compared, or athletes who are their own comparison. */
export type SampleDesign = "two groups" | "paired";

/** A study being planned. */
export interface PlannedStudy {
  /** The difference worth finding; its sign does not matter. */
  readonly difference: number;
  /** The SD within a group, or of the changes where the design is paired. */
  readonly sd: number;
  readonly power: number;
  readonly alpha: number;
  readonly design: SampleDesign;
  /** Of before and after; two groups compared from the same starting score need fewer athletes. 0 is none. */
  readonly correlation?: number | undefined;
  /** The share of athletes expected to drop out. */
  readonly dropout: number;
}

/** What the t test of a design has to go by with `n` athletes a group, or `n` pairs. */
interface DesignedTest {
  /** The fewest athletes that leave anything to test with. */
  readonly fewest: number;
  readonly samples: 1 | 2;
  readonly df: (n: number) => number;
  /** How many standard errors from 0 a difference of one SD lies. */
  readonly standardErrors: (n: number) => number;
}

const PAIRED: DesignedTest = {
  fewest: 2,
  samples: 1,
  df: (n) => n - 1,
  standardErrors: (n) => Math.sqrt(n),
};

const TWO_GROUPS: DesignedTest = {
  fewest: 2,
  samples: 2,
  df: (n) => 2 * (n - 1),
  standardErrors: (n) => Math.sqrt(n / 2),
};

/**
 * Two groups from the same starting score: the slope on the score before costs a degree of freedom, and the
 * groups' gap before, which is never quite 0, makes the difference a little less sure.
 */
const ADJUSTED: DesignedTest = {
  fewest: 3,
  samples: 2,
  df: (n) => 2 * n - 3,
  standardErrors: (n) => Math.sqrt(n / 2 / (1 + 1 / (2 * n - 4))),
};

/**
 * How many athletes a group, or how many pairs: the fewest that find the difference with the power asked
 * for, two-sided, exact by the noncentral t distribution. Adjusting for the score before shrinks the SD by
 * √(1 − r²) (Borm et al. 2007, J Clin Epidemiol 60:1234-1238). Dropouts are added at the end.
 *
 * Source: Cohen 1988, Statistical Power Analysis for the Behavioral Sciences; the gap before: Cox and
 * McCullagh 1982, Biometrics 38:541-561; Shieh 2020, Psychometrika 85:101-120 (both from memory).
 *
 * @param study - The difference, the SD and the design.
 * @returns Athletes a group, or pairs.
 * @throws BadInput where a value is out of its range, or no number of athletes is enough.
 */
export function sampleSize(study: PlannedStudy): number {
  const { power, alpha, dropout } = study;
  requireProbability("power", power);
  requireProbability("alpha", alpha);
  if (!(dropout >= 0 && dropout < 1)) {
    throw new BadInput(`dropout is ${dropout}; expected 0 or a fraction below 1`);
  }
  const design = designOf(study);
  const size = differenceInSds(study);
  const areEnough = (n: number): boolean =>
    power <= alpha || isFound(size * design.standardErrors(n), power, alpha, design.df(n), atLeast);

  const n = fewest(areEnough, design.fewest, roughSize(size, design.samples, power, alpha));
  return roundToMultiple(n / (1 - dropout), 1, "up");
}

/** The fewest athletes that are enough, searched outwards from a guess: more than enough is enough too. */
function fewest(areEnough: (n: number) => boolean, least: number, guess: number): number {
  let tooFew = least - 1;
  let enough = Math.max(least, guess);
  for (let step = 1; !areEnough(enough); step *= 2) {
    tooFew = enough;
    enough += step;
    if (enough > 2 * MOST) throw tooMany();
  }
  for (let step = 1; tooFew < least && enough > least; step *= 2) {
    const fewer = Math.max(least, enough - step);
    if (areEnough(fewer)) enough = fewer;
    else tooFew = fewer;
  }
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (areEnough(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}

const tooMany = () => new NoAnswer(`it would take more than ${MOST} athletes a group`);

function designOf({ design, correlation }: PlannedStudy): DesignedTest {
  if (!correlation) return design === "paired" ? PAIRED : TWO_GROUPS;
  if (design === "paired") {
    throw new BadInput(
      "correlation is given; expected none for paired changes, whose SD contains it",
    );
  }
  if (!(Math.abs(correlation) < 1)) {
    throw new BadInput(`correlation is ${correlation}; expected above −1 and below 1`);
  }
  return ADJUSTED;
}

function differenceInSds({ difference, sd, correlation = 0 }: PlannedStudy): number {
  if (difference === 0) throw new BadInput("the difference to find is 0; expected any other size");
  expectPositive("sd", sd);
  return Math.abs(difference) / (sd * Math.sqrt(1 - correlation ** 2));
}

/**
 * The size by the normal distribution, with the correction for t of Guenther 1981, Am Stat 35:243-244: an
 * athlete off at most, in most plans; the exact search starts there.
 */
function roughSize(size: number, samples: number, power: number, alpha: number): number {
  const z = -normalQuantile(alpha / 2);
  const reach = normalQuantile(power) + z;
  const n = Math.ceil((samples * reach ** 2) / size ** 2 + z ** 2 / (2 * samples));
  if (!(n <= MOST)) throw tooMany();
  return n;
}
