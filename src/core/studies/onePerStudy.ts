import { picked } from "../picked";
import { BadInput } from "../problem";
import { mean } from "../statistics/moments";

/** Effects with their standard errors, side by side. */
export interface EffectColumns {
  readonly effects: number[];
  readonly standardErrors: number[];
}

/**
 * One effect a study, where studies report several: several outcomes, or several groups against one control.
 * Taken for studies of their own they would count the same athletes twice.
 *
 * Effects with one label become their mean, with the variance (1/m²) Σ r_ij SE_i SE_j, where r is the
 * correlation between two effects of one study, and 1 with itself. An effect without a label is a study of
 * its own. Studies keep the order of their first effect.
 *
 * Source: Borenstein et al. 2009, Introduction to Meta-Analysis, chapter 24.
 *
 * @param effects - An effect a study, all in one unit.
 * @param standardErrors - The standard error of each effect, above 0.
 * @param labels - The study of each effect; without one it stands for itself.
 * @param correlation - Of two effects of one study, from 0 to 1.
 * @returns One effect a study with its standard error.
 * @throws BadInput where `correlation` is out of its range.
 */
export function onePerStudy(
  effects: readonly number[],
  standardErrors: readonly number[],
  labels: readonly (string | undefined)[],
  correlation = 0.5,
): EffectColumns {
  if (!(correlation >= 0 && correlation <= 1)) {
    throw new BadInput(`correlation is ${correlation}; expected a number from 0 to 1`);
  }
  const studies = new Map<string | number, number[]>();
  labels.forEach((label, row) => {
    const rows = studies.get(label ?? row);
    if (rows) rows.push(row);
    else studies.set(label ?? row, [row]);
  });
  const rows = [...studies.values()];
  return {
    effects: rows.map((own) => mean(picked(effects, own))),
    standardErrors: rows.map((own) => errorOfMean(picked(standardErrors, own), correlation)),
  };
}

/** The standard error of a mean of correlated effects: of the sum, (1 − r) Σ SE² + r (Σ SE)². */
function errorOfMean(errors: readonly number[], correlation: number): number {
  const [only, ...others] = errors;
  if (only !== undefined && others.length === 0) return only;
  const sum = errors.reduce((total, error) => total + error, 0);
  const squares = errors.reduce((total, error) => total + error ** 2, 0);
  return Math.sqrt((1 - correlation) * squares + correlation * sum ** 2) / errors.length;
}
