import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import { ErrorType } from "@univerjs/engine-formula";
import { mean, variance } from "../../../core/statistics/moments";
import { studentCdf, studentUpperQuantile } from "../../../core/statistics/student";
import { asNumber, notAvailable, wrongNumber, wrongValue } from "./numbers";
import { cellByCell, Corrected, Fault, fromPlain, toGrid, toPlain, type Plain } from "./plain";

/** Student's t to all the digits that a cell shows; the engine has nine of them. */
export const studentFunctions = (): readonly BaseFunction[] => [
  ...["T.DIST.2T", "T.DIST.RT"].map((name) => tailOf(name, name === "T.DIST.2T" ? 2 : 1)),
  cellByCell("TDIST", [3, 3], (t, df, tails) => {
    const [x, sides] = [asNumber(t), asNumber(tails)];
    if (x === undefined || (sides !== 1 && sides !== 2))
      return x === undefined ? wrongValue : wrongNumber;
    return x < 0 ? wrongNumber : onDegrees(df, (degrees) => sides * studentCdf(-x, degrees));
  }),
  cellByCell("T.INV", [2, 2], (p, df) =>
    forChance(p, (chance) =>
      onDegrees(df, (degrees) => {
        if (chance === 0.5) return 0;
        return chance < 0.5
          ? -studentUpperQuantile(chance, degrees)
          : studentUpperQuantile(1 - chance, degrees);
      }),
    ),
  ),
  ...["T.INV.2T", "TINV"].map((name) =>
    cellByCell(name, [2, 2], (p, df) =>
      forChance(p, (chance) =>
        onDegrees(df, (degrees) => studentUpperQuantile(chance / 2, degrees)),
      ),
    ),
  ),
  cellByCell("CONFIDENCE.T", [3, 3], (alpha, sd, size) => {
    const [spread, n] = [asNumber(sd), asNumber(size)];
    if (spread === undefined || n === undefined) return wrongValue;
    if (spread <= 0 || n < 1) return wrongNumber;
    if (n < 2) return new Fault(ErrorType.DIV_BY_ZERO);
    const count = Math.trunc(n);
    return forChance(alpha, (chance) =>
      onDegrees(
        count - 1,
        (df) => (studentUpperQuantile(chance / 2, df) * spread) / Math.sqrt(count),
      ),
    );
  }),
  ...["T.TEST", "TTEST"].map((name) => new Corrected(name, [4, 4], tTest)),
];

type Given = Exclude<Plain, Fault>;

function tailOf(name: string, sides: 1 | 2): BaseFunction {
  return cellByCell(name, [2, 2], (t, df) => {
    const x = asNumber(t);
    if (x === undefined) return wrongValue;
    if (x < 0 && sides === 2) return wrongNumber;
    return onDegrees(df, (degrees) => sides * studentCdf(-x, degrees));
  });
}

/** Degrees of freedom are cut to whole ones. */
function onDegrees(df: Given, compute: (degrees: number) => number): Plain {
  const degrees = asNumber(df);
  if (degrees === undefined) return wrongValue;
  return degrees < 1 ? wrongNumber : compute(Math.trunc(degrees));
}

function forChance(p: Given, compute: (chance: number) => Plain): Plain {
  const chance = asNumber(p);
  if (chance === undefined) return wrongValue;
  return chance <= 0 || chance >= 1 ? wrongNumber : compute(chance);
}

/** The p of two columns' means: of pairs, with one variance, or with two (Welch). */
function tTest(
  first: BaseValueObject,
  second: BaseValueObject,
  tails: BaseValueObject,
  kind: BaseValueObject,
): BaseValueObject {
  const [one, other] = [toGrid(first).flat(), toGrid(second).flat()];
  const fault = [...one, ...other].find((cell) => cell instanceof Fault);
  const [sides, type] = [Number(toPlain(tails)), Number(toPlain(kind))];
  if (fault) return fromPlain(fault);
  if (![1, 2].includes(sides) || ![1, 2, 3].includes(type)) return fromPlain(wrongNumber);
  if (type === 1 && one.length !== other.length) return fromPlain(notAvailable);
  const { t, df } = type === 1 ? paired(one, other) : unpaired(numbers(one), numbers(other), type);
  if (!Number.isFinite(t) || !(df > 0)) return fromPlain(new Fault(ErrorType.DIV_BY_ZERO));
  return fromPlain(sides * studentCdf(-Math.abs(t), df));
}

const numbers = (cells: readonly Plain[]) => cells.filter((cell) => typeof cell === "number");

function paired(one: readonly Plain[], other: readonly Plain[]) {
  const differences = one.flatMap((cell, index) => {
    const partner = other[index];
    return typeof cell === "number" && typeof partner === "number" ? [cell - partner] : [];
  });
  const n = differences.length;
  return { t: mean(differences) / Math.sqrt(variance(differences) / n), df: n - 1 };
}

function unpaired(one: readonly number[], other: readonly number[], type: number) {
  const [n, m] = [one.length, other.length];
  const difference = mean(one) - mean(other);
  if (type === 2) {
    const df = n + m - 2;
    const pooled = ((n - 1) * variance(one) + (m - 1) * variance(other)) / df;
    return { t: difference / Math.sqrt(pooled * (1 / n + 1 / m)), df };
  }
  const [a, b] = [variance(one) / n, variance(other) / m];
  const df = (a + b) ** 2 / (a ** 2 / (n - 1) + b ** 2 / (m - 1));
  return { t: difference / Math.sqrt(a + b), df };
}
