/**
 * The slope of the restricted likelihood without rounding: every double is a whole number over a power of two, so that
 * all can be multiplied until only whole numbers are left. Its sign just below and just above an answer proves it.
 */

/** Doubles as they are: whole numbers over one power of two. */
interface Exact {
  readonly whole: readonly bigint[];
  /** The power. */
  readonly places: number;
}

function exactly(values: readonly number[]): Exact {
  const each = values.map(wholeOf);
  const places = Math.max(...each.map((one) => one.places));
  return { whole: each.map((one) => one.whole << BigInt(places - one.places)), places };
}

/** A double, doubled until it is a whole number, and how often it was. */
function wholeOf(value: number) {
  let [whole, places] = [value, 0];
  for (; !Number.isInteger(whole); whole *= 2) places++;
  return { whole: BigInt(whole), places };
}

const total = (terms: readonly bigint[]) => terms.reduce((sum, term) => sum + term, 0n);

/** The sign of y'PPy − tr P at a between-study variance, for a mean or, where doses are given, a line. */
export function exactSlopeSign(
  effects: readonly number[],
  variances: readonly number[],
  between: number,
  doses?: readonly number[],
): number {
  const y = exactly(effects);
  const own = exactly([...variances, between]);
  const tau = own.whole.at(-1)!;
  const spreads = own.whole.slice(0, -1).map((variance) => variance + tau);
  // A study's weight, times all the others' spreads: whole, and `all` / 2^places times what it is.
  const all = spreads.reduce((product, spread) => product * spread, 1n);
  const weights = spreads.map((spread) => all / spread);
  const doubled = doses ? exactly(doses).whole : undefined;
  const rows = weights.map((_, i) => (doubled ? [1n, doubled[i]!] : [1n]));
  const columns = rows[0]!.map((_, k) => rows.map((row) => row[k]!));
  const sumOver = (one: readonly bigint[], other: readonly bigint[]) =>
    total(weights.map((weight, i) => weight * one[i]! * other[i]!));

  const { adjugate, determinant } = inverseOf(
    columns.map((one) => columns.map((other) => sumOver(one, other))),
  );
  const right = columns.map((one) => sumOver(one, y.whole));
  const beta = adjugate.map((row) => total(row.map((cell, c) => cell * right[c]!)));
  // Residuals and spreads of the fit, each times the determinant.
  const residuals = rows.map(
    (x, i) => y.whole[i]! * determinant - total(x.map((cell, k) => cell * beta[k]!)),
  );
  const leverages = rows.map((x) =>
    total(adjugate.flatMap((row, r) => row.map((cell, c) => cell * x[r]! * x[c]!))),
  );
  const pulls = total(weights.map((weight, i) => (weight * residuals[i]!) ** 2n));
  const trace = total(weights.map((weight, i) => weight * (determinant - weight * leverages[i]!)));
  // The pulls are all² · 4^y.places · determinant² / 4^own.places as large as they are, the trace all · determinant / 2^own.places.
  const shift = BigInt(2 * y.places - own.places);
  const slope =
    shift >= 0n
      ? pulls - ((trace * all * determinant) << shift)
      : (pulls << -shift) - trace * all * determinant;
  return slope > 0n ? 1 : slope < 0n ? -1 : 0;
}

/** The inverse of a 1 × 1 or 2 × 2 matrix, times its determinant, and that. */
function inverseOf(m: readonly (readonly bigint[])[]): {
  readonly adjugate: readonly (readonly bigint[])[];
  readonly determinant: bigint;
} {
  if (m.length === 1) return { adjugate: [[1n]], determinant: m[0]![0]! };
  const [[a, b], [c, d]] = m as [[bigint, bigint], [bigint, bigint]];
  return {
    adjugate: [
      [d, -b],
      [-c, a],
    ],
    determinant: a * d - b * c,
  };
}
