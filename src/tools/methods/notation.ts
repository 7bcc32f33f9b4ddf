/** How to read the worked examples, once for all of them. */
export const NOTATION: readonly string[] = [
  "A line names a step and shows what it comes to, six digits of it. {1; 2; 3} is a column; what is done to a column is done to " +
    "each of its values, and y[2] is its second. ^ is a power, a comparison such as x > 2 is 1 or 0, and ≈ stands where a sum " +
    "in small steps is taken for an integral. Every number is computed when this page is made, and a test holds our functions to the steps.",
  "sd(x) divides by n − 1. sumOfProducts(x, y) is the sum of the products of deviations, of x from its mean and of y from its own. " +
    "normal and t are distribution functions, tQuantile(p, df) and chiSquareQuantile(p, df) the values below which a share p lies, " +
    "twoSidedP(t, df) is the p of a t (of a normal value without df), and fAbove and chiSquareAbove are upper tails. J(m) is Hedges' exact correction on m degrees of freedom. " +
    "wholeDown and wholeUp round to the nearest whole number, a tie down or up. noncentralTOutside(limit, df, ncp) is the share of a noncentral t beyond ± limit, " +
    "and hypergeometric(k, drawn, marked, all) the chance of k marked among those drawn.",
  "trendLines, trendWays, trendWaysOfTwo and spreads show what our functions go by inside: their columns are named beside them.",
  "“From memory” says of a reference that its text was not at hand when it was cited; where part of it was seen, it is said what.",
];
