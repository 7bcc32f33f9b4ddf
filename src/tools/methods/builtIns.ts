import * as distributions from "../../core/statistics/distributions";
import { mean, standardDeviation, sum, sumOfProducts } from "../../core/statistics/moments";
import { cellsOf, each, isGrid, numberOf, numbersOf, together, type Value } from "./values";

type BuiltIn = (...values: Value[]) => Value;

/** A function of one number, for each of a column. */
const ofEach =
  (change: (number: number) => number): BuiltIn =>
  (value = null) =>
    each(value, change);

/** A function of all the numbers of a column. */
const ofAll =
  (reduce: (numbers: readonly number[]) => number): BuiltIn =>
  (...values) =>
    reduce(values.flatMap(numbersOf));

/** A function of numbers by their places. */
const ofNumbers =
  (compute: (...numbers: number[]) => number): BuiltIn =>
  (...values) =>
    compute(...values.map(numberOf));

/** What a worked example may use beside + − × / and ^: each as statisticians name it. */
export const builtIns: Readonly<Record<string, BuiltIn>> = {
  sqrt: ofEach(Math.sqrt),
  exp: ofEach(Math.exp),
  ln: ofEach(Math.log),
  abs: ofEach(Math.abs),
  sinh: ofEach(Math.sinh),
  cosh: ofEach(Math.cosh),
  floor: ofEach(Math.floor),
  ceiling: ofEach((number) => Math.ceil(number - 1e-9)),
  /** Whole, a tie down. */
  wholeDown: ofEach((number) => Math.ceil(number - 0.5 - 1e-9)),
  /** Whole, a tie up. */
  wholeUp: ofEach((number) => Math.floor(number + 0.5 + 1e-9)),

  n: (value = null) => cellsOf(value).length,
  sum: ofAll(sum),
  product: ofAll((numbers) => numbers.reduce((product, number) => product * number, 1)),
  mean: ofAll(mean),
  sd: ofAll(standardDeviation),
  min: ofAll((numbers) => Math.min(...numbers)),
  max: ofAll((numbers) => Math.max(...numbers)),
  atLeast: (value = null, least = null) => together(value, least, Math.max),
  sumOfProducts: (x = null, y = null) => sumOfProducts(numbersOf(x), numbersOf(y)),
  /** All values of several columns, one below the other. */
  joined: (...values) => values.flatMap(cellsOf),
  /** Several columns side by side. */
  beside: (...values) => {
    const columns = values.map(cellsOf);
    return { rows: (columns[0] ?? []).map((_, i) => columns.map((column) => column[i] ?? null)) };
  },
  /** from, from + step, … up to to. */
  steps: ofSteps,
  /** One column of a grid, the first being 1. */
  column: (grid = null, number = null) => {
    if (!isGrid(grid)) throw new Error("a column of what is no grid");
    return grid.rows.map((row) => row[numberOf(number) - 1] ?? null);
  },
  /** The rows of a grid below its heading. */
  below: (grid = null) => {
    if (!isGrid(grid)) throw new Error("rows of what is no grid");
    return { rows: grid.rows.slice(1) };
  },

  normal: ofEach(distributions.normalCdf),
  normalDensity: ofEach(distributions.normalDensity),
  normalQuantile: ofNumbers(distributions.normalQuantile),
  t: ofNumbers(distributions.studentCdf),
  tQuantile: ofNumbers(distributions.studentQuantile),
  twoSidedP: ofNumbers((statistic, df?: number) => distributions.twoSidedP(statistic, df)),
  chiSquareQuantile: ofNumbers(distributions.chiSquareQuantile),
  chiSquareAbove: ofNumbers(distributions.chiSquareUpperTail),
  fQuantile: ofNumbers(distributions.fQuantile),
  fAbove: ofNumbers(distributions.fUpperTail),
  noncentralTOutside: ofNumbers(distributions.noncentralTOutside),
  hypergeometric: ofNumbers(chanceOfCount),
  J: ofNumbers(distributions.hedgesCorrection),
};

function ofSteps(from: Value = null, to: Value = null, step: Value = null): Value {
  const [first, size] = [numberOf(from), numberOf(step)];
  const count = Math.round((numberOf(to) - first) / size);
  return Array.from({ length: count + 1 }, (_, i) => first + i * size);
}

/** The chance of `count` of the `marked` among `drawn` of `all`. */
function chanceOfCount(count = 0, drawn = 0, marked = 0, all = 0): number {
  const { logGamma } = distributions;
  const logChoose = (n: number, k: number) =>
    logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);
  const log =
    logChoose(marked, count) + logChoose(all - marked, drawn - count) - logChoose(all, drawn);
  return Math.exp(log);
}
