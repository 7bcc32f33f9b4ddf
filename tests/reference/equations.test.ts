import { describe, expect, test } from "vitest";
import { BadInput } from "../../src/core/problem";
import { equations, fractionAt, type EquationName } from "../../src/core/strength/equations";
import { elementAt, named } from "../present";
import { difference } from "./compare";
import { readReference } from "./data";
import { equationTable } from "./equationTable";

const { table, match, largestDeviation } = equationTable.read();
const handbook = (readReference("handbook") as { seen: { reps: number[]; percent: number[] } })
  .seen;

test("the table has every equation there is", () => {
  expect(equationTable.names().sort()).toEqual(Object.keys(equations).sort());
});

describe.each(Object.keys(equations) as EquationName[])("%s", (name) => {
  const equation = equations[name];

  // LeSuer et al. 1997, J Strength Cond Res 11:211-213; the table is their equations by arithmetic.
  test.each(table.map((entry) => [entry.t, named(entry, name)] as const))(
    "lifts at %d reps to failure what the published equation says",
    (t, expected) => {
      if (typeof expected === "object") {
        expect(() => fractionAt(equation, t)).toThrow(BadInput);
      } else {
        expect(difference(fractionAt(equation, t), expected, match)).toBeUndefined();
      }
    },
  );

  test("strays from the handbook's percentages by no more than it is known to, and there", () => {
    const deviations = handbook.reps
      .map((reps, row) => ({
        reps,
        deviation: 100 * fractionAt(equation, reps) - elementAt(handbook.percent, row),
      }))
      .filter(({ reps }) => reps >= 2);
    const size = (one: { deviation: number }) => Math.abs(one.deviation);
    const largest = deviations.reduce((most, one) => (size(one) > size(most) ? one : most));
    const mean = deviations.reduce((sum, one) => sum + size(one), 0) / deviations.length;
    const known = named(largestDeviation.equations, name);
    expect(largest.reps).toBe(known.reps);
    expect(difference(largest.deviation, known.deviation, largestDeviation.match)).toBeUndefined();
    expect(difference(mean, known.meanAbsolute, largestDeviation.match)).toBeUndefined();
  });
});
