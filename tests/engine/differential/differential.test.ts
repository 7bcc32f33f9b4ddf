import { beforeAll, describe, expect, it } from "vitest";
import { hasLibreOffice } from "../../libreOffice";
import { agree, readCases, showValues, type Case } from "./cases";
import { computeHere, computeInLibreOffice, isRight, summary, type Computed } from "./compute";

/*
 * The ordinary formulas of coaches and analysts, in the files beside this one, as the engine computes them in a
 * workbook's file. `npx tsx tests/engine/differential/report.ts` lists what differs, and what we say we cannot compute.
 */

const cases = readCases();
let computed: ReadonlyMap<Case, Computed>;
beforeAll(async () => {
  computed = await computeHere(cases);
  process.stdout.write(`${summary(cases, computed)}\n`);
}, 120_000);

const areas = [...new Set(cases.map(({ area }) => area))];

describe.each(areas)("the formulas of %s", (area) => {
  it("come to what LibreOffice computes or is worked out by hand, or are left with a reason", () => {
    const wrong = cases
      .filter((one) => one.area === area && !isRight(one, computed.get(one)!))
      .map((one) => {
        const { values, left } = computed.get(one)!;
        return `${one.area}:${one.line} ${one.formula} came to ${left ?? showValues(values)}`;
      });
    expect(wrong).toEqual([]);
  });
});

describe("the list", () => {
  it("is long, and little of it is left", () => {
    expect(cases.length).toBeGreaterThan(800);
    expect(cases.filter(({ isLeft }) => isLeft).length).toBeLessThan(10);
  });

  it.runIf(hasLibreOffice)(
    "has of LibreOffice what LibreOffice says today",
    { timeout: 120_000 },
    () => {
      const answers = computeInLibreOffice(cases);
      const changed = cases
        .filter(({ source, isLeft }) => source === "LibreOffice" && !isLeft)
        .filter((one) => !one.expected || !agree(answers.get(one)!, one.expected))
        .map((one) => `${one.area}:${one.line} ${one.formula} is ${showValues(answers.get(one)!)}`);
      expect(changed).toEqual([]);
    },
  );
});
