/**
 * The slope of the restricted likelihood without rounding: every double is a fraction of integers, and the
 * slope is a fraction of those. Its sign just below and just above an answer proves the answer.
 */
interface Fraction {
  readonly top: bigint;
  readonly bottom: bigint;
}

const fraction = (top: bigint, bottom: bigint): Fraction =>
  bottom < 0n ? { top: -top, bottom: -bottom } : { top, bottom };
const plus = (a: Fraction, b: Fraction) =>
  fraction(a.top * b.bottom + b.top * a.bottom, a.bottom * b.bottom);
const times = (a: Fraction, b: Fraction) => fraction(a.top * b.top, a.bottom * b.bottom);
const negative = (a: Fraction) => fraction(-a.top, a.bottom);
const minus = (a: Fraction, b: Fraction) => plus(a, negative(b));
const over = (a: Fraction, b: Fraction) => fraction(a.top * b.bottom, a.bottom * b.top);
const total = (all: readonly Fraction[]) => all.reduce(plus, fraction(0n, 1n));

/** The double as it is: its 53 bits over a power of two. */
function exactly(value: number): Fraction {
  let [top, bottom] = [value, 1n];
  while (!Number.isInteger(top)) {
    top *= 2;
    bottom *= 2n;
  }
  return fraction(BigInt(top), bottom);
}

/** The sign of y'PPy − tr P at a between-study variance, for a mean or, where doses are given, a line. */
export function exactSlopeSign(
  effects: readonly number[],
  variances: readonly number[],
  between: number,
  doses?: readonly number[],
): number {
  const one = fraction(1n, 1n);
  const y = effects.map(exactly);
  const w = variances.map((v) => over(one, plus(exactly(v), exactly(between))));
  const rows = doses ? doses.map((dose) => [one, exactly(dose)]) : effects.map(() => [one]);
  const inverse = invert(
    rows[0]!.map((_, r) =>
      rows[0]!.map((__, c) =>
        total(w.map((wi, i) => times(wi, times(rows[i]![r]!, rows[i]![c]!)))),
      ),
    ),
  );
  const right = rows[0]!.map((_, r) =>
    total(w.map((wi, i) => times(wi, times(rows[i]![r]!, y[i]!)))),
  );
  const beta = inverse.map((row) => total(row.map((cell, c) => times(cell, right[c]!))));
  const slope = total(
    w.map((wi, i) => {
      const x = rows[i]!;
      const residual = minus(y[i]!, total(x.map((xr, r) => times(xr, beta[r]!))));
      const spread = total(
        inverse.flatMap((row, r) => row.map((cell, c) => times(cell, times(x[r]!, x[c]!)))),
      );
      const pull = times(wi, residual);
      return minus(times(pull, pull), times(wi, minus(one, times(wi, spread))));
    }),
  );
  return slope.top > 0n ? 1 : slope.top < 0n ? -1 : 0;
}

/** The inverse of a 1 × 1 or 2 × 2 matrix. */
function invert(m: Fraction[][]): Fraction[][] {
  const one = fraction(1n, 1n);
  if (m.length === 1) return [[over(one, m[0]![0]!)]];
  const [[a, b], [c, d]] = m as [[Fraction, Fraction], [Fraction, Fraction]];
  const determinant = minus(times(a, d), times(b, c));
  return [
    [over(d, determinant), over(negative(b), determinant)],
    [over(negative(c), determinant), over(a, determinant)],
  ];
}
