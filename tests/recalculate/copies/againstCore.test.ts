import { describe, expect, it } from "vitest";
import { implementations } from "../../../src/functions/implementations";
import { lambdas, lambdaText } from "../../../src/recalculate/copies/lambdas";
import { hasClosedForm } from "../../../src/recalculate/copies/rewriteFormula";
import { whyFrozen } from "../../../src/recalculate/copies/whyFrozen";
import { compareWithCore } from "./againstCore";
import { draws } from "./draws";

/** As many calls as take no time; tests/hostile/copies.test.ts makes thousands. */
const CALLS = 20;

describe("a copy's function", () => {
  const ids = Object.keys(implementations).filter(hasClosedForm);

  it("is there for every function that has a closed form, and each is tried", () => {
    expect(ids.length).toBeGreaterThanOrEqual(42);
    expect(Object.keys(draws).sort()).toEqual([...ids].sort());
  });

  it("is missing for a reason that the report can tell, of every function that has none", () => {
    const frozen = Object.keys(implementations).filter((id) => !hasClosedForm(id));
    const untold = frozen.filter((id) => whyFrozen(id) === whyFrozen("NEVERHEARDOF"));
    expect(untold).toEqual([]);
    expect(ids.filter((id) => whyFrozen(id) !== whyFrozen("NEVERHEARDOF"))).toEqual([]);
  });

  for (const id of ids) {
    it(`answers as ${id} does, whatever the cells hold`, () => {
      compareWithCore(id, CALLS);
    });
  }

  it("is a formula short enough for a name of Excel's", () => {
    for (const lambda of lambdas.values()) {
      expect(lambdaText(lambda).length, lambda.name).toBeLessThan(8192);
    }
  });
});
