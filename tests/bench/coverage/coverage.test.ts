import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { families } from "./registry";
import { measure, nameOf, outside, shortRuns } from "./scenario";
import { percent, rowsIn, rowsOf } from "./tables";

const document = readFileSync(new URL("../../../docs/accuracy.md", import.meta.url), "utf8");

/** The short form of `npm run coverage`: fewer runs, the same seeds. */
describe.each(families)("what $name promises", (family) => {
  it.each(family.scenarios.map((scenario) => ({ name: nameOf(scenario), scenario })))(
    "$name",
    ({ scenario }) => {
      const measured = measure(scenario, shortRuns(scenario));
      const found = `${percent(measured.share)} of ${measured.count}`;
      const band = scenario.band.map(percent).join(" to ");
      expect(outside(scenario, measured), `${found}, expected from ${band}`).toBe(false);
    },
  );

  it("stands in docs/accuracy.md, row for row (npm run coverage writes it)", () => {
    expect(rowsIn(document, family)).toEqual(rowsOf(family));
  });
});
