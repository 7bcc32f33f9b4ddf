import { choice, required, setting } from "../../cells";
import { sampleSize as sizeSample } from "../../core/testing/sampleSize";
import { lift } from "../answer";
import * as quantities from "../quantities";
import { alphaSetting, powerSetting } from "../settings";

/**
 * @customenum {string}
 */
export enum DesignChoice {
  /** Two groups, compared with each other. The usual one. */
  twoGroups = "two groups",
  /** The same athletes twice. */
  paired = "paired",
}

/**
 * How many athletes a study needs: per group, or how many pairs, to find a difference with the power you ask for.
 *
 * @customfunction SAMPLESIZE
 * @param difference The difference worth finding, its sign does not matter; not 0.
 * @param sd The standard deviation within a group, or of the changes where design is "paired"; above 0, in the same unit.
 * @param [power] {@phrase power}
 * @param [alpha] {@phrase falseAlarm}
 * @param [design] "two groups" if omitted, or "paired".
 * @param [correlation] Correlation of before and after, where two groups are compared from the same starting score, as GROUPCHANGE does: fewer athletes will do, at least 3. 0 if omitted: compared without it. Not with "paired".
 * @param [dropout] The fraction of athletes expected to drop out; 0 if omitted.
 * @returns Athletes per group, or pairs; at least 2 (3 with a correlation), rounded up.
 * @errors #VALUE! for a correlation with "paired", or a fraction that is none.
 * @example =SPARE.SAMPLESIZE(0.5, 1)
 * @example =SPARE.SAMPLESIZE(5, 10, 0.8, 0.05, "two groups", 0.7, 0.2)
 * @source Cohen 1988, Statistical Power Analysis; correlation: Borm et al. 2007, J Clin Epidemiol 60:1234-1238; Shieh 2020, Psychometrika 85:101-120.
 */
export function sampleSize(
  difference: unknown[][],
  sd: unknown[][],
  power?: unknown[][],
  alpha?: unknown[][],
  design?: DesignChoice[][],
  correlation?: unknown[][],
  dropout?: unknown[][],
): unknown[][] {
  const share = {
    ...quantities.atLeast0("dropout", "a fraction from 0 to below 1, such as 0.2"),
    accepts: (value: number) => value >= 0 && value < 1,
  };
  return lift(
    {
      difference: required(difference, quantities.score("difference", "a difference, not 0")),
      sd: required(sd, quantities.spread("sd")),
      power: powerSetting(power),
      alpha: alphaSetting(alpha),
      design: choice(design, "design", DesignChoice, DesignChoice.twoGroups),
      correlation: setting(correlation, quantities.correlation(), 0),
      dropout: setting(dropout, share, 0),
    },
    sizeSample,
  );
}
