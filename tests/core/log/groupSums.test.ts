import { op, table } from "arquero";
import fc from "fast-check";
import { expect, test } from "vitest";
import { closeSets } from "../../../src/core/log/closeSets";
import { volumeLoads } from "../../../src/core/log/volumeLoad";
import { elementAt } from "../../present";
import { randomLog } from "./randomLog";

const WITHIN = 4;

test("volume load and close sets by key equal the sums of a general-purpose data library", () => {
  fc.assert(
    fc.property(randomLog, ({ keys, ...columns }) => {
      const sums = table({ ...keys, ...columns })
        .derive({ count: "d => d.sets === null ? 1 : d.sets" })
        .derive({
          volume: "d => d.load === null || d.reps === null ? 0 : d.count * d.reps * d.load",
          close: `d => d.reps !== null && d.reserve !== null && d.reserve <= ${WITHIN} ? d.count : 0`,
        })
        .groupby("lifter")
        .rollup({ volume: op.sum("volume"), close: op.sum("close") });
      const lifters = sums.array("lifter") as string[];
      const groupOf = (row: number) => lifters.indexOf(elementAt(keys.lifter, row));

      const volumes = volumeLoads(columns, groupOf, lifters.length);
      expect(volumes).toEqual(sums.array("volume"));
      expect(closeSets(columns, WITHIN, groupOf, lifters.length)).toEqual(sums.array("close"));
    }),
  );
});

test("a row without reps is not there, whatever else it holds", () => {
  const log = { load: [100, 100], reps: [5, null], reserve: [1, 1], sets: [2, 3] };
  expect(volumeLoads(log, () => 0, 1)).toEqual([1000]);
  expect(closeSets(log, WITHIN, () => 0, 1)).toEqual([2]);
});
