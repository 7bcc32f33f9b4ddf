import { expectPositive } from "../checks";
import { roundToMultiple } from "../load/round";
import { BadInput, NoAnswer } from "../problem";
import { atLeast } from "../statistics/compare";
import { normalQuantile, requireProbability } from "../statistics/distributions";
import { powerOfT } from "./power";

/** Groups larger than this are no answer to a coach. */
const MOST = 1e7;

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
  /** Of before and after; two groups compared from the same starting score need fewer athletes. */
  readonly correlation?: number | undefined;
  /** The share of athletes expected to drop out. */
  readonly dropout: number;
}

/**
 * How many athletes a group, or how many pairs: the fewest that find the difference with the power asked
 * for, two-sided, exact by the noncentral t distribution. Adjusting for the score before shrinks the SD by
 * √(1 − r²) (Borm et al. 2007, J Clin Epidemiol 60:1234-1238). Dropouts are added at the end.
 *
 * Source: Cohen 1988, Statistical Power Analysis for the Behavioral Sciences.
 */
export function sampleSize(study: PlannedStudy): number {
  const { power, alpha, design, dropout } = study;
  requireProbability("power", power);
  requireProbability("alpha", alpha);
  if (!(dropout >= 0 && dropout < 1)) {
    throw new BadInput(`dropout is ${dropout}; expected 0 or a fraction below 1`);
  }
  const size = differenceInSds(study);
  const samples = design === "paired" ? 1 : 2;
  const powerAt = (n: number): number =>
    powerOfT(size * Math.sqrt(n / samples), samples * (n - 1), alpha);

  const n = fewest(
    (athletes) => atLeast(powerAt(athletes), power),
    roughSize(size, samples, power, alpha),
  );
  return roundToMultiple(n / (1 - dropout), 1, "up");
}

/** The fewest athletes, from 2, that are enough; more are enough too, so the search can halve its way. */
function fewest(areEnough: (athletes: number) => boolean, guess: number): number {
  if (areEnough(2)) return 2;
  let tooFew = 2;
  let enough = Math.max(3, guess);
  while (!areEnough(enough)) {
    tooFew = enough;
    enough *= 2;
    if (enough > 2 * MOST) throw tooMany();
  }
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (areEnough(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}

const tooMany = () => new NoAnswer(`it would take more than ${MOST} athletes a group`);

function differenceInSds({ difference, sd, design, correlation }: PlannedStudy): number {
  if (difference === 0) throw new BadInput("the difference to find is 0; expected any other size");
  expectPositive("sd", sd);
  if (correlation === undefined) return Math.abs(difference) / sd;
  if (design === "paired") {
    throw new BadInput("correlation goes with two groups; the SD of paired changes contains it");
  }
  if (!(Math.abs(correlation) < 1)) {
    throw new BadInput(`correlation is ${correlation}; expected above -1 and below 1`);
  }
  return Math.abs(difference) / (sd * Math.sqrt(1 - correlation ** 2));
}

/** The size by the normal distribution, a few athletes off at most; the exact search starts there. */
function roughSize(size: number, samples: number, power: number, alpha: number): number {
  const reach = normalQuantile(power) - normalQuantile(alpha / 2);
  const n = Math.ceil((samples * reach ** 2) / size ** 2);
  if (!(n <= MOST)) throw tooMany();
  return n;
}
