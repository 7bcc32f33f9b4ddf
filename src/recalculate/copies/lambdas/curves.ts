import type { EquationName } from "../../../core/strength/equations";

/** A published curve and its inverse as spreadsheet formulas, of t reps to failure from 2 on. */
interface CurveText {
  readonly at: (t: string) => string;
  readonly inverse: (fraction: string) => string;
}

/** The seven published curves (LeSuer et al. 1997), as they are printed. */
export const curves: Readonly<Record<EquationName, CurveText>> = {
  epley: { at: (t) => `1/(1+${t}/30)`, inverse: (f) => `30*(1/${f}-1)` },
  brzycki: { at: (t) => `(37-${t})/36`, inverse: (f) => `37-36*${f}` },
  lander: {
    at: (t) => `(101.3-2.67123*${t})/100`,
    inverse: (f) => `(101.3-100*${f})/2.67123`,
  },
  lombardi: { at: (t) => `1/${t}^0.1`, inverse: (f) => `(1/${f})^10` },
  mayhew: {
    at: (t) => `(52.2+41.9*EXP(-0.055*${t}))/100`,
    inverse: (f) => `LN(41.9/(100*${f}-52.2))/0.055`,
  },
  oconner: { at: (t) => `1/(1+0.025*${t})`, inverse: (f) => `(1/${f}-1)/0.025` },
  wathan: {
    at: (t) => `(48.8+53.8*EXP(-0.075*${t}))/100`,
    inverse: (f) => `LN(53.8/(100*${f}-48.8))/0.075`,
  },
};

/** One formula that picks a curve by its equation's name; `#VALUE!` where no curve has that name. */
export function pickCurve(write: (curve: CurveText) => string): string {
  return Object.entries(curves).reduceRight(
    (otherwise, [name, curve]) => `IF(equation="${name}",${write(curve)},${otherwise})`,
    "#VALUE!",
  );
}
