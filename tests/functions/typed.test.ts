import { describe, expect, it } from "vitest";
import { CellError } from "../../src/cells";
import { implementations } from "../../src/functions/implementations";
import { computeWeekMonotony } from "../../src/functions/log/weekMonotony";
import { computeWeekStrain } from "../../src/functions/log/weekStrain";
import { computeReserveCheck } from "../../src/functions/reserve/reserveCheck";
import { computePoolStudies } from "../../src/functions/studies/poolStudies";
import { computeBalancedGroups } from "../../src/functions/testing/balancedGroups";
import { computeChangeScore } from "../../src/functions/testing/changeScore";
import { computeSwc } from "../../src/functions/testing/swc";
import { functions } from "./catalogue";

const effects = [[0.1], [0.3], [0.2]];
const standardErrors = [[0.1], [0.1], [0.1]];

const errorOf = (compute: () => unknown): unknown => {
  try {
    return compute();
  } catch (error) {
    return error;
  }
};

describe("the typed half of a cell function", () => {
  it("has the numbers that the cells show, without binary dust", () => {
    const { estimate, studies } = computePoolStudies({ effects, standardErrors });
    const shown = new Map(
      implementations.POOLSTUDIES(effects, standardErrors) as [string, unknown][],
    );
    expect(estimate).toBe(0.2);
    expect(shown.get("estimate")).toBe(estimate);
    expect(shown.get("studies")).toBe(studies);
  });

  it("throws what the cell shows as an error, too little data and bad cells alike", () => {
    const none = errorOf(() => computePoolStudies({ effects: [[""]], standardErrors: [[""]] }));
    expect([[none]]).toEqual(implementations.POOLSTUDIES([[""]], [[""]]));
    expect(none).toBeInstanceOf(CellError);
    const bad = [["80kg"], [1], [2]];
    const named = errorOf(() => computePoolStudies({ effects: bad, standardErrors }));
    expect([[named]]).toEqual(implementations.POOLSTUDIES(bad, standardErrors));
  });

  it("says why a value does not exist for the data", () => {
    const { predictLow } = computePoolStudies({ effects: 0.3, standardErrors: 0.1 });
    expect(predictLow).toEqual({ absent: expect.stringMatching(/stud/) as string });
  });

  it("has nothing where the only row is not filled in yet", () => {
    const blank = { repAtCall: "", calledReserve: "", repsToFailure: "" };
    expect(computeReserveCheck(blank)).toBeUndefined();
  });

  it("of a function that lifts, has a result or an error of its own in each row", () => {
    const [[rise], [bad], [waits]] = computeChangeScore({
      before: [[100], [100], [null]],
      after: [[110.3], ["11O"], [90]],
      typicalError: 2,
    }) as [[unknown], [unknown], [unknown]];
    expect(rise).toMatchObject({ change: 10.3, reading: "real increase" });
    expect(bad).toBeInstanceOf(CellError);
    expect(waits).toBeNull();
  });

  it("of a week is the number that its cell shows, and nothing while the week is blank", () => {
    const loads = [[300, 450, 0, 600, 200, "rest", 500]];
    expect([[computeWeekMonotony({ loads })]]).toEqual(implementations.WEEKMONOTONY(loads));
    expect([[computeWeekStrain({ loads })]]).toEqual(implementations.WEEKSTRAIN(loads));
    expect([computeWeekMonotony({ loads: "" }), computeWeekStrain({ loads: "" })]).toEqual([
      undefined,
      undefined,
    ]);
    const oneDay = errorOf(() => computeWeekMonotony({ loads: 300 }));
    expect([[oneDay]]).toEqual(implementations.WEEKMONOTONY(300));
    expect(oneDay).toBeInstanceOf(CellError);
  });

  it("of SWC has a change for each fraction, and an error of its own for a bad one", () => {
    const scores = [[146], [148], [170], ["DNS"], [157]];
    const fraction = [[0.2], [-1], [0.6]];
    const changes = computeSwc({ scores, fraction });
    expect(changes).toEqual(implementations.SWC(scores, fraction));
    const [[first], [bad], [third]] = changes as [[number], [unknown], [number]];
    expect(third).toBeCloseTo(3 * first, 12);
    expect(bad).toBeInstanceOf(CellError);
    expect(computeSwc({ scores })).toEqual([[first]]);
  });

  it("of BALANCEDGROUPS has a letter for each row, and nothing beside a heading or a missing score", () => {
    const scores = [["row"], [140], [155], ["DNS"], [132], [148]];
    const letters = computeBalancedGroups({ scores, groups: 2, seed: 7 });
    expect(letters.map((letter) => [letter ?? ""])).toEqual(
      implementations.BALANCEDGROUPS(scores, 2, null, 7),
    );
    expect([letters[0], letters[3]]).toEqual([null, null]);
    expect(letters.filter((letter) => letter !== null).sort()).toEqual(["A", "A", "B", "B"]);
  });
});

describe("the cell functions", () => {
  it("are those that the families' indexes name, and every one is in the catalogue", () => {
    expect(Object.keys(implementations)).toEqual(functions.map(({ id }) => id));
    expect(Object.keys(implementations).filter((id) => id.startsWith("COMPUTE"))).toEqual([]);
  });
});
