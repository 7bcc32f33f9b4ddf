import { describe, expect, it } from "vitest";
import { CellError } from "../../src/cells";
import { implementations } from "../../src/functions/implementations";
import { computeReserveCheck } from "../../src/functions/reserve/reserveCheck";
import { computePoolStudies } from "../../src/functions/studies/poolStudies";
import { computeChangeScore } from "../../src/functions/testing/changeScore";
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
});

describe("the cell functions", () => {
  it("are those that the families' indexes name, and every one is in the catalogue", () => {
    expect(Object.keys(implementations)).toEqual(functions.map(({ id }) => id));
    expect(Object.keys(implementations).filter((id) => id.startsWith("COMPUTE"))).toEqual([]);
  });
});
