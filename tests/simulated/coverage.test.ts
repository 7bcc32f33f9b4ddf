import { describe, expect, it } from "vitest";
import { families } from "../bench/coverage/registry";
import { measure, nameOf, outside, shortRuns } from "../bench/coverage/scenario";
import { percent } from "../bench/coverage/tables";

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
});
