import { logGamma } from "./gamma";
import { normalCdf } from "./normal";

/** From here on Stirling's series for the gamma function is exact to rounding. */
const STIRLING = 10;
/** From here on the normal distribution with one correction is exact to rounding, and sums grow long. */
const NEARLY_NORMAL = 1e7;
/** The smallest share of a sum or a fraction that can still change it. */
const ROUNDING = 1e-17;

/** The two parts of the gamma function's integral, cut at x, as shares of the whole. */
export interface GammaShares {
  /** P(a, x), the share below x. */
  readonly lower: number;
  /** Q(a, x), the share above x. */
  readonly upper: number;
}

/**
 * The regularized incomplete gamma functions, P and Q, each exact where it is small. `a` and `x` above 0.
 *
 * Below a + 1 the power series of P, above it the continued fraction of Q: both are exact for any a, they
 * only take longer near the middle of a large one (some 10,000 terms at a = 500,000). The factor both share,
 * x^a e^-x / Γ(a + 1), is computed from how far x lies from a, because as a difference of the large numbers
 * a ln x, x and ln Γ it loses its digits. (`@stdlib/math-base-special-gammainc` 0.3.1 is wrong by up to 6%
 * for a above 1,000 or so and x near a; see docs/accuracy.md.)
 *
 * Sources: Abramowitz and Stegun 1964, 6.5.29 and 6.5.31; Temme 1979, SIAM J Math Anal 10:757-766 for a
 * above ten million.
 */
export function gammaShares(a: number, x: number): GammaShares {
  if (a > NEARLY_NORMAL) return nearlyNormal(a, x);
  if (x < a + 1) {
    const lower = commonFactor(a, x) * lowerSeries(a, x);
    return { lower, upper: 1 - lower };
  }
  const upper = commonFactor(a, x) * a * upperFraction(a, x);
  return { lower: 1 - upper, upper };
}

/** x^a e^-x / Γ(a + 1). */
function commonFactor(a: number, x: number): number {
  if (a < STIRLING) return Math.exp(a * Math.log(x) - x - logGamma(a + 1));
  const stirling =
    (1 / 12 - (1 / 360 - (1 / 1260 - (1 / 1680 - 1 / 1188 / a ** 2) / a ** 2) / a ** 2) / a ** 2) /
    a;
  return Math.exp(-a * excess(a, x) - stirling) / Math.sqrt(2 * Math.PI * a);
}

/** x/a - 1 - ln(x/a), without the cancellation where x is near a. */
function excess(a: number, x: number): number {
  const d = (x - a) / a;
  const r = d / (2 + d);
  if (Math.abs(r) > 0.3) return d - Math.log(x / a);
  // ln(1 + d) = 2 (r + r³/3 + r⁵/5 + …), and d - 2r = r d.
  const square = r * r;
  let sum = 0;
  let power = 1;
  for (let n = 3; power > ROUNDING; n += 2) {
    sum += power / n;
    power *= square;
  }
  return r * (d - 2 * square * sum);
}

/** 1 + x/(a + 1) + x²/((a + 1)(a + 2)) + … */
function lowerSeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; term > ROUNDING * sum; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** 1/(x + 1 - a - 1 (1 - a)/(x + 3 - a - 2 (2 - a)/(…))), from the front (Lentz 1976, Appl Opt 15:668-671). */
function upperFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = Infinity;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; ; n++) {
    const numerator = n * (a - n);
    b += 2;
    c = b + numerator / c;
    d = 1 / (b + numerator * d);
    fraction *= c * d;
    if (Math.abs(c * d - 1) < 2 * Number.EPSILON) return fraction;
  }
}

/** The normal distribution of the signed root of the excess, with Temme's first correction. */
function nearlyNormal(a: number, x: number): GammaShares {
  const eta = Math.sign(x - a) * Math.sqrt(2 * excess(a, x));
  const density = Math.exp((-a * eta * eta) / 2) / Math.sqrt(2 * Math.PI * a);
  // a/(x - a) - 1/eta; where eta is larger than a few hundredths both shares are 0 and 1 to all digits.
  const correction = density * (-1 / 3 + eta / 12 - (2 * eta * eta) / 135);
  const z = eta * Math.sqrt(a);
  return { lower: normalCdf(z) - correction, upper: normalCdf(-z) + correction };
}
