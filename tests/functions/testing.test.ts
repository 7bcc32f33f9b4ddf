import { describe, expect, it } from "vitest";
import { CellError } from "../../src/cells";
import { call, messageOf, shown, value } from "./catalogue";

/** An invented squad, tested twice: two of them missed a test, one was never there. */
const groups = ["A", "A", "A", "A", "A", "B", "B", "B", "B", "B", ""].map((group) => [group]);
const before = [100, 110, 95, "DNS", 105, 102, 98, 111, 107, "", ""].map((score) => [score]);
const after = [108, 116, 104, 120, 111, 104, 97, 113, 108, "", ""].map((score) => [score]);

const reportOf = (id: string, ...args: unknown[]) =>
  Object.fromEntries(call(id, ...args) as [string, unknown][]);

describe("a real change of one athlete", () => {
  it("is told apart in words, one cell a row", () => {
    const readings = call(
      "CHANGESCORE",
      [["before"], [100], [100], [100], [100], ["DNS"]],
      [["after"], [110], [90], [101], [106], [99]],
      2,
      [["smallest"], [1], [1], [1], [8], [1]],
      null,
      null,
      "reading",
    );
    expect(readings.flat()).toEqual([
      "",
      "real increase",
      "real decrease",
      "within test error",
      "real increase, perhaps too small to matter",
      "",
    ]);
  });

  it("may be too small to matter although it is real", () => {
    const part = (smallest: number) =>
      value("CHANGESCORE", 100, 106, 2, smallest, null, null, "reading");
    expect(part(0)).toBe("real increase");
    expect(part(12)).toBe("real, too small to matter");
    expect(shown(part(-1))).toContain("smallest is -1; expected a change of 0 or more");
  });

  it("is a row of eight, blank across where a score is missing", () => {
    expect(call("CHANGESCORE", 100, "DNS", 2)).toEqual([Array(8).fill("")]);
    expect(call("CHANGESCORE", 100, 110, 2)[0]).toHaveLength(8);
  });

  it("needs more where the typical error comes from few athletes", () => {
    expect(value("MDC", 2, null, 5)).toBeGreaterThan(value("MDC", 2) as number);
    expect(value("MDC", 2, "", "")).toBe(value("MDC", 2, 0.95));
  });

  it("has a confidence that is a fraction", () => {
    expect(shown(value("MDC", 2, 95))).toContain("confidence is 95; expected a fraction");
    expect(value("MDC", 2, 1)).toBeInstanceOf(CellError);
  });
});

describe("SQUADCHANGE", () => {
  const names = ["athlete", "Ada", "", "Noor", "Iris", "Ada", 0].map((name) => [name]);
  const first = ["before", 100, 90, "DNS", 105, 120, 95].map((score) => [score]);
  const second = ["after", 105, 99, 110, 107.5, 135, 99].map((score) => [score]);

  it("is a row an athlete with both scores, in the sheet's order; names may repeat, rows without one are left out", () => {
    const [headings, ...rows] = call("SQUADCHANGE", names, first, second, 2.5);
    expect(headings).toEqual([
      "athlete",
      "reading",
      "change",
      "shrunk change",
      "low",
      "high",
      "chance above smallest",
      "chance below minus smallest",
    ]);
    expect(rows.map(([name, , change]) => [name, change])).toEqual([
      ["Ada", 5],
      ["Iris", 2.5],
      ["Ada", 15],
    ]);
  });

  it("takes a blank option for its default, as any host passes it", () => {
    const usual = call("SQUADCHANGE", names, first, second, 2.5);
    for (const blank of [null, undefined, "", 0]) {
      const given = [blank, blank, blank, blank];
      expect(call("SQUADCHANGE", names, first, second, 2.5, ...given)).toEqual(usual);
    }
    expect(call("SQUADCHANGE", names, first, second, 2.5, 0, null, 0.95, 10)).toEqual(usual);
  });

  it("waits for its typical error, has no answer without a pair, and names a bad row", () => {
    expect(call("SQUADCHANGE", names, first, second, "")).toEqual([[""]]);
    expect(
      shown(
        value(
          "SQUADCHANGE",
          names,
          first,
          names.map(() => [""]),
          2.5,
        ),
      ),
    ).toMatch(/^#N\/A ./);
    const bad = second.map((row, at) => (at === 4 ? ["107kg"] : row));
    expect(shown(value("SQUADCHANGE", names, first, bad, 2.5))).toMatch(
      /^#VALUE! the 5th row of .*107kg/,
    );
    const two = names.map(([name]) => [name, name]);
    expect(shown(value("SQUADCHANGE", two, first, second, 2.5))).toContain("expected one column");
    expect(shown(value("SQUADCHANGE", names, first, second, 2.5, -1))).toContain("smallest is -1");
  });
});

describe("TESTTREND", () => {
  const names = ["athlete", "Ada", "Noor", "ada ", "Ada", "Noor", "Iris", ""].map((name) => [name]);
  const dates = ["date", 46000, 46000, 46028, 46056, 46056, 46000, 46000].map((date) => [date]);
  const scores = ["jump", 30, 40, 31.5, 32, 41, 28, 33].map((score) => [score]);

  it("is a row an athlete in order of first appearance, blank where there is no line", () => {
    const [headings, ...rows] = call("TESTTREND", names, dates, scores);
    expect(headings).toEqual([
      "athlete",
      "tests",
      "slope",
      "low",
      "high",
      "shrunk slope",
      "next",
      "next low",
      "next high",
    ]);
    expect(rows.map(([name, tests]) => [name, tests])).toEqual([
      ["Ada", 3],
      ["Noor", 2],
      ["Iris", 1],
    ]);
    expect(rows[2]!.slice(2)).toEqual(Array(7).fill(""));
  });

  it("counts by weeks unless told otherwise, as any host passes a blank", () => {
    const usual = call("TESTTREND", names, dates, scores, 7, 0.95);
    for (const blank of [null, undefined, "", 0]) {
      expect(call("TESTTREND", names, dates, scores, blank, blank)).toEqual(usual);
    }
  });

  it("needs three tests of somebody, and days above 0", () => {
    const few = [names.slice(1, 3), dates.slice(1, 3), scores.slice(1, 3)];
    expect(shown(value("TESTTREND", ...few))).toMatch(/^#N\/A expected three tests/);
    expect(shown(value("TESTTREND", names, dates, scores, -7))).toContain("per is -7");
  });
});

describe("a pair", () => {
  it("is dropped, and counted, when either side is missing; a blank row is not there", () => {
    expect(reportOf("PAIREDCHANGE", before, after)).toMatchObject({ n: 8, dropped: 1 });
    expect(reportOf("RESPONDERS", before, after, 0)).toMatchObject({ n: 8, dropped: 1 });
  });

  it("alone has a mean change, but no interval", () => {
    const report = reportOf("PAIREDCHANGE", [[100]], [[104]]);
    expect(report).toMatchObject({ n: 1, "mean change": 4, low: "", high: "" });
    expect(shown(value("PAIREDCHANGE", [[100]], [[104]], null, "low"))).toMatch(/^#N\/A ./);
  });
});

describe("RELIABILITY", () => {
  const trials = [
    ["T1", "T2"],
    [146, 140],
    [148, 152],
    [170, 152],
    [90, ""],
    [157, 145],
  ];

  it("takes athletes with every trial, under headings or without", () => {
    expect(reportOf("RELIABILITY", trials)).toMatchObject({ n: 4, dropped: 1, trials: 2 });
    expect(call("RELIABILITY", trials.slice(1))).toEqual(call("RELIABILITY", trials));
  });

  it("gives the typical error that CHANGESCORE takes, in one cell", () => {
    const error = value("RELIABILITY", trials, null, "Typical Error");
    expect(error).toBe(reportOf("RELIABILITY", trials)["typical error"]);
    expect(call("CHANGESCORE", 146, 170, error)[0]).toHaveLength(8);
  });

  it("gives the degrees of freedom that make MDC its detectable change", () => {
    const { df, ...report } = reportOf("RELIABILITY", trials);
    expect(df).toBe(3);
    expect(report["detectable change"]).toBe(value("MDC", report["typical error"], null, df));
  });

  it("names the row of a bad cell", () => {
    const bad = trials.map((row, at) => (at === 2 ? [148, "152cm"] : row));
    expect(shown(value("RELIABILITY", bad))).toMatch(/^#VALUE! the 3rd row of .*152cm/);
  });
});

describe("GROUPCHANGE", () => {
  it("counts who was lost from each group", () => {
    expect(reportOf("GROUPCHANGE", groups, before, after)).toMatchObject({
      "group A": "A",
      "group B": "B",
      "n A": 4,
      "lost A": 1,
      "n B": 4,
    });
  });

  it("takes the group that is named first for A, and turns the difference round", () => {
    const asKept = value("GROUPCHANGE", groups, before, after, null, null, "difference") as number;
    const turned = reportOf("GROUPCHANGE", groups, before, after, "b");
    expect(turned["group A"]).toBe("B");
    expect(turned.difference).toBeCloseTo(-asKept, 12);
  });

  it("wants exactly two groups", () => {
    const three = groups.map((row, at) => (at === 0 ? ["C"] : row));
    expect(shown(value("GROUPCHANGE", three, before, after))).toMatch(/^#VALUE! ./);
    expect(shown(value("GROUPCHANGE", "A", before, after))).toMatch(/^#VALUE! ./);
  });

  it("never reads a difference out of one group's small p beside the other's large one", () => {
    const two = [..."AAAAABBBBB"].map((group) => [group]);
    const start = [100, 110, 95, 103, 105, 102, 98, 111, 107, 100].map((score) => [score]);
    const end = [103, 114, 100, 107, 108, 111, 96, 118, 106, 106].map((score) => [score]);
    const report = reportOf("GROUPCHANGE", two, start, end);
    expect(report["p A"]).toBeLessThan(0.05);
    expect(report["p B"]).toBeGreaterThan(0.05);
    expect(report.reading).toMatch(/^no difference between A and B shown/);
  });
});

describe("TESTTABLE", () => {
  it("has a row a measure under its name, and asks for headings", () => {
    const wide = (name: string, column: unknown[][]) => [
      [`${name} jump`, `${name} row`],
      ...column.map(([score]) => [score, score]),
    ];
    const headed = [["group"], ...groups];
    const result = call("TESTTABLE", headed, wide("first", before), wide("second", after));
    expect(result.map(([measure]) => measure)).toEqual(["measure", "first jump", "first row"]);
    expect(shown(value("TESTTABLE", groups, before, after))).toContain("headings");
  });
});

describe("reports on single numbers", () => {
  it("ask for one part of a range, and give it in the range's shape", () => {
    expect(shown(value("RESPONDERDIFF", [[5], [6]], 10, 3, 10))).toContain(
      "expected one for a range",
    );
    const differences = call("RESPONDERDIFF", [[5], [""], [6]], 10, 3, 10, null, "difference");
    expect(differences.map(([content]) => typeof content)).toEqual(["number", "string", "number"]);
  });

  it("take a count of 0 for a value", () => {
    expect(value("RESPONDERDIFF", 0, 10, 3, 10, null, "share A")).toBe(0);
    expect(value("RESPONDERDIFF", 0, 0, 3, 10, null, "share A")).toBe("");
  });
});

describe("RESPONSESHARE", () => {
  const share = (...args: unknown[]) => value("RESPONSESHARE", 5, 6, 2.5, 4, ...args);

  it("says what it lacks where n is blank, as any host passes it", () => {
    for (const blank of [null, undefined, "", 0]) {
      expect(share(blank, null, null, "reading")).toBe("say n to tell spread from test error");
      expect(shown(share(blank, null, null, "p"))).toMatch(/^#N\/A without n/);
    }
  });

  it("refuses an n that cannot be", () => {
    for (const n of [1, 2.5, -4]) expect(shown(share(n))).toContain("expected a whole number");
  });

  it("runs down a column of squads", () => {
    const readings = call("RESPONSESHARE", 5, [[6], [4]], 2.5, 4, 20, 9, null, "reading");
    expect(readings.flat()).toEqual(Array(2).fill("all may have changed alike"));
  });
});

describe("SAMPLESIZE", () => {
  it("is the plain t test without a correlation, as any host passes a blank", () => {
    for (const blank of [null, undefined, "", 0]) {
      expect(value("SAMPLESIZE", 0.5, 1, null, null, null, blank)).toBe(64);
      expect(value("SAMPLESIZE", 0.5, 1, null, null, "paired", blank)).toBe(34);
    }
  });

  it("does not care which way the difference goes", () => {
    expect(value("SAMPLESIZE", -0.5, 1)).toBe(value("SAMPLESIZE", 0.5, 1));
  });

  it("grows with dropout and shrinks with correlation, for two groups only", () => {
    const plain = value("SAMPLESIZE", 0.5, 1) as number;
    expect(value("SAMPLESIZE", 0.5, 1, null, null, null, null, 0.2)).toBeGreaterThan(plain);
    expect(value("SAMPLESIZE", 0.5, 1, null, null, null, 0.7)).toBeLessThan(plain);
    expect(shown(value("SAMPLESIZE", 0.5, 1, null, null, "paired", 0.7))).toMatch(/^#VALUE! ./);
  });

  it("agrees with the smallest difference that groups of that size find", () => {
    const n = value("SAMPLESIZE", 0.7, 1) as number;
    expect(value("DETECTABLE", n, n)).toBeLessThanOrEqual(0.7);
    expect(value("DETECTABLE", n - 1, n - 1)).toBeGreaterThan(0.7);
  });
});

describe("BALANCEDGROUPS", () => {
  const scores = [["score"], ...[50, 42, 61, "", 55, 47, 58, 44, 52].map((score) => [score])];
  const dealt = (...rest: unknown[]) => call("BALANCEDGROUPS", scores, ...rest).flat();

  it("puts a letter beside each score, nothing beside a heading or a blank", () => {
    const letters = dealt(2, null, 7);
    expect([letters[0], letters[4]]).toEqual(["", ""]);
    expect(letters.filter((letter) => letter === "A")).toHaveLength(4);
    expect(letters.filter((letter) => letter === "B")).toHaveLength(4);
  });

  it("deals the same split for the same seed, and others for others", () => {
    expect(dealt(2, null, 7)).toEqual(dealt(2, null, 7));
    const splits = new Set(
      Array.from({ length: 20 }, (_split, at) => dealt(2, null, at + 1).join()),
    );
    expect(splits.size).toBeGreaterThan(5);
  });

  it("refuses a seed that is not whole, and takes a blank one for 1", () => {
    expect(messageOf(call("BALANCEDGROUPS", scores, 2, null, 1.5))).toBe(
      "#VALUE! seed is 1.5; expected a whole number of your own",
    );
    for (const blank of [null, undefined, "", 0])
      expect(dealt(2, null, blank)).toEqual(dealt(2, null, 1));
  });
});
