import { describe, expect, it } from "vitest";
import { call, shown, value } from "./catalogue";

describe("rounding a load", () => {
  it("goes to the nearest, an exact tie down, whatever binary fractions say", () => {
    expect(value("ROUNDLOAD", 98.75, 2.5)).toBe(97.5);
    expect(value("ROUNDLOAD", 98.76, 2.5)).toBe(100);
    expect(value("ROUNDLOAD", 1.05, 0.1)).toBe(1);
  });

  it("goes down or up where asked, and stays on a multiple", () => {
    expect(value("ROUNDLOAD", 99, 2.5, "Down")).toBe(97.5);
    expect(value("ROUNDLOAD", 99, 2.5, "up")).toBe(100);
    expect(value("ROUNDLOAD", 0.3, 0.1, "down")).toBe(0.3);
    expect(value("ROUNDLOAD", 0.3, 0.1, "up")).toBe(0.3);
  });

  it("does nothing for an increment of 0 or a blank one", () => {
    expect(value("ROUNDLOAD", 98.6, 0)).toBe(98.6);
    expect(value("ROUNDLOAD", 98.6, "")).toBe(98.6);
    expect(shown(value("ROUNDLOAD", 98.6, -2.5))).toContain("increment is -2.5;");
  });
});

describe("LOADFOR", () => {
  it("fills a plan: lifters down, reps across", () => {
    const [first, second, third] = call("LOADFOR", [[140], [""], [100]], [[5, 3, 1]], 2, 2.5);
    expect(second).toEqual(["", "", ""]);
    expect([first?.length, third?.length]).toEqual([3, 3]);
    for (const load of [first, third].flat()) expect(Number(load) % 2.5).toBe(0);
  });

  it("is the maximum itself for one rep to failure", () => {
    expect(value("LOADFOR", 140, 1)).toBe(140);
    expect(shown(value("LOADFOR", 140, 0.5))).toMatch(/^#VALUE! .*0\.5/);
  });
});

describe("NEXTLOAD", () => {
  it("keeps the load where the next set is the one just done", () => {
    expect(value("NEXTLOAD", 100, 8, 2, 8, 2)).toBe(100);
    expect(value("NEXTLOAD", 100, 8, 2, 5, 5)).toBe(100);
  });

  it("goes down after a set that was harder than meant, up after an easier one", () => {
    expect(value("NEXTLOAD", 100, 8, 0, 8, 2, 2.5)).toBeLessThan(100);
    expect(value("NEXTLOAD", 100, 8, 4, 8, 2, 2.5)).toBeGreaterThan(100);
  });
});

describe("a chart", () => {
  it("lists 1 to 12 reps down and 0 to 4 in reserve across under a blank corner", () => {
    const [headings, ...rows] = call("LOADCHART", 140, null, null, 2.5);
    expect(headings).toEqual(["", 0, 1, 2, 3, 4]);
    expect(rows.map(([reps]) => reps)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    expect(rows[0]?.[1]).toBe(140);
    expect(rows[4]?.[3]).toBe(value("LOADFOR", 140, 5, 2, 2.5));
  });

  it("heads its columns with RPE where asked, without another number changing", () => {
    const reserve = call("PERCENTCHART", null, [[0, 1, 2.5]]);
    const rpe = call("PERCENTCHART", null, [[0, 1, 2.5]], null, "RPE");
    expect(rpe[0]).toEqual(["", 10, 9, 7.5]);
    expect(rpe.slice(1)).toEqual(reserve.slice(1));
  });

  it("takes its reps and reserves along a row or a column, with a heading of their own", () => {
    const across = call("PERCENTCHART", [[3, 5]], [[0], [2]]);
    expect(call("PERCENTCHART", [["reps"], [3], [5]], [["reserve"], [0], [2]])).toEqual(across);
    expect(call("PERCENTCHART", [[3], [""], [5]], [[0, 2]])).toEqual(across);
  });

  it("is blank in a cell past the equation's reach", () => {
    expect(call("PERCENTCHART", [[12]], [[3, 4]], "brzycki")[1]).toEqual([
      12,
      value("PERCENT1RM", 12, 3, "brzycki"),
      "",
    ]);
    const own = call("PERCENTCHART", [[29]], [[1, 2]], 30);
    expect(own[1]?.map((content) => typeof content)).toEqual(["number", "number", "string"]);
  });

  it("is for one lifter, and waits for the maximum", () => {
    expect(call("LOADCHART", "")).toEqual([[""]]);
    expect(shown(value("LOADCHART", [[140], [100]]))).toBe(
      "#VALUE! oneRepMax has 2 rows; expected one value",
    );
  });

  it("takes a list that holds nothing for one that is not given", () => {
    expect(call("PERCENTCHART", [[""], [""]])).toEqual(call("PERCENTCHART"));
    expect(call("PERCENTCHART", "", "")).toEqual(call("PERCENTCHART"));
  });
});

describe("the scale of effort", () => {
  it("turns reserve into RPE and back", () => {
    for (const rpe of [5, 7.5, 8, 9.5, 10]) {
      expect(value("RIRTORPE", value("RPETORIR", rpe))).toBe(rpe);
    }
  });

  it("has ends, which the error names", () => {
    expect(shown(value("RPETORIR", 4.5))).toBe("#VALUE! rpe is 4.5; expected an RPE of 5 to 10");
    expect(shown(value("RPETORIR", 10.5))).toContain("expected an RPE of 5 to 10");
    expect(shown(value("RIRTORPE", 5.5))).toContain("expected reps in reserve, 0 to 5");
  });

  it("has no RPE of 0, so that 0 is a blank; a reserve of 0 is a value", () => {
    expect(value("RPETORIR", 0)).toBe("");
    expect(value("RIRTORPE", 0)).toBe(10);
  });
});

describe("PLATES", () => {
  it("has a bar for each set of plates, unless another is given", () => {
    expect(value("PLATES", 20)).toBe("bar only");
    expect(value("PLATES", 45, "", "LB")).toBe("bar only");
    expect(value("PLATES", 15, 15)).toBe("bar only");
    expect(value("PLATES", 20, "", [[10], [5]])).toBe("bar only");
  });

  it("lifts over loads and bars, each with its own error", () => {
    const [first, second, third] = call("PLATES", [[100], [101], [""]], 20).flat();
    expect([first, third]).toEqual(["25 + 15", ""]);
    expect(shown(second)).toMatch(/^#N\/A the 2nd row: .*100.*102\.5/);
  });

  it("counts the pairs there are, a blank being no limit", () => {
    expect(
      value("PLATES", 120, 20, [
        [25, 1],
        [5, ""],
      ]),
    ).toBe("25 + 5 + 5 + 5 + 5 + 5");
    expect(
      value("PLATES", 120, 20, [
        ["plate", "pairs"],
        [25, 2],
        [5, 1],
      ]),
    ).toBe("25 + 25");
  });

  it("uses the fewest plates, even where the largest first would need more", () => {
    expect(value("PLATES", 80, 20, [[25], [15], [1.25]])).toBe("15 + 15");
  });

  it("refuses a load lighter than the bar or names the bar's load", () => {
    expect(shown(value("PLATES", 15))).toMatch(/^#(VALUE!|N\/A) .*20/);
  });

  it("lists the choices of plates in the error", () => {
    expect(shown(value("PLATES", 100, 20, "stones"))).toBe(
      '#VALUE! plates is "stones"; expected "kg", "lb" or a column of plates',
    );
  });
});

describe("WARMUPSETS", () => {
  it("is a table with headings that does not list the work set", () => {
    const [headings, ...rows] = call("WARMUPSETS", 180, 20, 2.5);
    expect(headings).toEqual(["load", "reps"]);
    expect(rows.map(([load]) => load as number).every((load) => load >= 20 && load < 180)).toBe(
      true,
    );
  });

  it("fits one cell as a summary, beside every work set of the day", () => {
    const [first, second] = call("WARMUPSETS", [[100], [""]], 20, 2.5, null, "summary").flat();
    expect(first).toBe("40 x 8, 60 x 5, 75 x 3, 90 x 1");
    expect(second).toBe("");
  });

  it("never goes below the bar", () => {
    const loads = call("WARMUPSETS", 40, 20)
      .slice(1)
      .map(([load]) => load as number);
    expect(Math.min(...loads)).toBe(20);
    expect(shown(value("WARMUPSETS", 15, 20))).toMatch(/^#VALUE! .*20/);
  });
});
