import { describe, expect, it } from "vitest";
import { CellError } from "../../src/cells";
import { cellAt, elementAt, only } from "../present";
import { call, messageOf, shown, value } from "./catalogue";

const blanks = (count: number) => new Array<null>(count).fill(null);

describe("an equation", () => {
  it("is Epley's unless one is named, in any case", () => {
    expect(value("E1RM", 100, 5, 0, "")).toBe(value("E1RM", 100, 5, 0, "epley"));
    expect(value("E1RM", 100, 5, 0, 0)).toBe(value("E1RM", 100, 5, 0, "Epley "));
  });

  it("can be the lifter's own constant, as a number or as text with a point or a comma", () => {
    const own = value("E1RM", 100, 5, 2, 27.5);
    expect(own).not.toBe(value("E1RM", 100, 5, 2));
    for (const spelling of ["27.5", "27,5", " 27.5 ", [[27.5]]]) {
      expect(value("E1RM", 100, 5, 2, spelling)).toBe(own);
    }
  });

  it("can differ from row to row", () => {
    const [epley, own, usual] = call("E1RM", 100, 5, 0, [["epley"], [25], [""]]).flat();
    expect(epley).toBe(usual);
    expect(own).toBeCloseTo(116, 9);
  });

  it("that is none of them is refused with the names and the way out", () => {
    expect(shown(value("E1RM", 100, 5, 0, "epleys"))).toMatch(
      /^#VALUE! equation is "epleys"; expected "epley", .*"wathan", or the lifter's own constant above 0$/,
    );
    expect(shown(value("E1RM", 100, 5, 0, -25))).toContain("equation is -25; expected");
  });
});

describe("E1RM", () => {
  it("refuses more reps than its equation reaches, and says how many that is", () => {
    expect(typeof value("E1RM", 100, 30)).toBe("number");
    expect(shown(value("E1RM", 100, 28, 3))).toMatch(/^#VALUE! .*31.*30/);
    expect(typeof value("E1RM", 100, 15, 0, "brzycki")).toBe("number");
    expect(shown(value("E1RM", 100, 14, 2, "brzycki"))).toMatch(/^#VALUE! .*16.*15/);
  });

  it("makes a chart of a column of loads against a row of reps", () => {
    const chart = call("E1RM", [[100], [110]], [[1, 3, 5]]);
    expect(chart.map((row) => row.length)).toEqual([3, 3]);
    expect(chart[1]?.[0]).toBe(110);
  });
});

describe("E1RMBAND", () => {
  it("is a row, or one of its values in one cell", () => {
    const [low, estimate, high] = only(call("E1RMBAND", 100, 5, 2));
    expect(value("E1RMBAND", 100, 5, 2, null, null, "LOW")).toBe(low);
    expect(value("E1RMBAND", 100, 5, 2, null, null, "high")).toBe(high);
    expect(estimate).toBe(value("E1RM", 100, 5, 2));
  });

  it("takes all equations at once, and says so where a word is none", () => {
    const [low, estimate, high] = only(call("E1RMBAND", 60, 20, null, null, "All"));
    expect([low, estimate, high].map((one) => Math.round(one as number))).toEqual([81, 100, 102]);
    expect(messageOf(call("E1RMBAND", 60, 20, null, null, "every"))).toMatch(
      /^#VALUE! equation is "every"; expected .*, or the lifter's own constant above 0, or "all"$/,
    );
    // Only this function takes them all.
    expect(shown(value("E1RM", 60, 20, null, "all"))).toMatch(/^#VALUE! equation is "all"/);
  });

  it("takes 0 for a call that cannot be wrong, and a blank for a rep", () => {
    const [low, estimate, high] = only(call("E1RMBAND", 100, 5, 2, 0));
    expect([low, high]).toEqual([estimate, estimate]);
    expect(call("E1RMBAND", 100, 5, 2, "")).toEqual(call("E1RMBAND", 100, 5, 2, 1));
  });

  it("never counts fewer reps than were done", () => {
    expect(call("E1RMBAND", 100, 5, 0, 2)[0]?.[0]).toBe(value("E1RM", 100, 5));
  });
});

describe("REPSAT", () => {
  it("is 0 above the one-repetition maximum and #N/A below what the equation reaches", () => {
    expect(value("REPSAT", 101, 100)).toBe(0);
    expect(shown(value("REPSAT", 20, 100))).toMatch(/^#N\/A ./);
  });

  it("undoes PERCENT1RM", () => {
    for (const equation of ["epley", "lombardi", "wathan", "18"]) {
      const fraction = value("PERCENT1RM", 8, 1, equation) as number;
      expect(value("REPSAT", 100 * fraction, 100, 1, equation)).toBeCloseTo(8, 9);
    }
  });
});

describe("FITCURVE", () => {
  const loads = [["load"], [120], [110], ["BW"], [92.5], [80], [100]];
  const reps = [["reps"], [1], [3], [5], [8], [12], [""]];

  it("learns from whole sets only, and skips the heading", () => {
    expect(value("FITCURVE", loads, reps, null, null, "sets")).toBe(4);
  });

  it("leaves out a set whose reserve is not recorded", () => {
    const reserves = [["reserve"], ["0"], ["0"], ["0"], [""], ["0"], ["0"]];
    expect(value("FITCURVE", loads, reps, reserves, null, "sets")).toBe(3);
  });

  it("gives a constant that the other functions take", () => {
    const constant = value("FITCURVE", loads, reps, null, null, "constant");
    expect(typeof constant).toBe("number");
    expect(typeof value("E1RM", 100, 5, 2, constant)).toBe("number");
  });

  it("gives its values by a range of labels, in its shape", () => {
    const labels = [["constant", "one-rep max"]];
    const [constant, maximum] = only(call("FITCURVE", loads, reps, null, null, labels));
    expect(constant).toBe(value("FITCURVE", loads, reps, null, null, "constant"));
    expect(maximum).toBeGreaterThan(100);
  });

  it("has narrower intervals at a lower confidence", () => {
    const width = (confidence: number) => {
      const part = (label: string) =>
        value("FITCURVE", loads, reps, null, confidence, label) as number;
      return part("constant high") - part("constant low");
    };
    expect(width(0.5)).toBeLessThan(width(0.95));
  });

  it("says why it has no answer", () => {
    expect(shown(value("FITCURVE", [[100], [90]], [[3], [6]]))).toMatch(/^#N\/A .*3/);
    expect(shown(value("FITCURVE", [[100], [90], [95]], [[5], [5], [5]]))).toMatch(/^#N\/A ./);
    expect(shown(value("FITCURVE", [[90], [100], [110]], [[3], [5], [8]]))).toMatch(/^#N\/A ./);
  });
});

describe("STRENGTHTREND", () => {
  const days = [[46000], [46003], [46007], [46010], [46014]];
  const loads = [[100], [102.5], [100], [105], [107.5]];
  const trend = (...rest: unknown[]) =>
    call(
      "STRENGTHTREND",
      days,
      loads,
      [[5], [5], [6], [5], [4]],
      [[2], [1], [2], [1], [2]],
      ...rest,
    );

  it("is a table with headings, a day a row", () => {
    const [headings, ...rows] = trend();
    expect(headings).toEqual(["date", "one-rep max", "low", "high"]);
    expect(rows.map(([date]) => date)).toEqual(days.flat());
    for (const [, maximum, low, high] of rows as [number, number, number, number][]) {
      expect(low).toBeLessThan(maximum);
      expect(maximum).toBeLessThan(high);
    }
  });

  it("gives today's maximum in one cell: the table's last row", () => {
    const parts = [["today"], ["low"], ["high"], ["days"], ["sets"]];
    const [today, low, high, dayCount, sets] = trend(
      null,
      null,
      null,
      null,
      null,
      null,
      parts,
    ).flat();
    expect([today, low, high]).toEqual(trend().at(-1)!.slice(1));
    expect([dayCount, sets]).toEqual([5, 5]);
  });

  it("does not care in which order the log is kept", () => {
    const turned = (column: unknown[][]) => [...column].reverse();
    const backwards = call(
      "STRENGTHTREND",
      turned(days),
      turned(loads),
      [[4], [5], [6], [5], [5]],
      [[2], [1], [2], [1], [2]],
    );
    expect(backwards.map(([date]) => date)).toEqual(trend().map(([date]) => date));
    (backwards.slice(1) as number[][]).forEach(([, maximum], row) => {
      expect(maximum).toBeCloseTo(cellAt(trend(), row + 1, 1) as number, 6);
    });
  });

  it("takes Dates, as Sheets passes them", () => {
    const dates = days.flat().map((serial) => [new Date(1899, 11, 30 + serial)]);
    const [, ...rows] = call("STRENGTHTREND", dates, loads, 5);
    expect(rows.map(([date]) => date)).toEqual(days.flat());
  });

  it("reads more strength into the same sets of a lifter who calls too few reps", () => {
    const today = (bias: unknown) =>
      cellAt(trend(bias, null, null, null, null, null, "today"), 0, 0) as number;
    expect(today(1)).toBeGreaterThan(today(0));
    expect(today(0)).toBe(today(""));
  });

  it("is #N/A under three days", () => {
    const twoDays = [[46000], [46003], [46003]];
    expect(shown(value("STRENGTHTREND", twoDays, [[100], [105], [100]], 5))).toMatch(/^#N\/A .*3/);
  });
});

describe("the spread of curves in a trend", () => {
  const days = [[46000], [46003], [46007], [46010]];
  const width = (equation: unknown, curveSd: unknown) => {
    const options = [null, null, null, equation, null, curveSd];
    const part = (label: string) =>
      value("STRENGTHTREND", days, 100, 8, 2, ...options, label) as number;
    return part("high") - part("low");
  };

  it("is a quarter for a published equation, a tenth for the athlete's own", () => {
    expect(width(null, null)).toBe(width("epley", 0.25));
    expect(width(null, "")).toBe(width("epley", 0.25));
    expect(width(27, null)).toBe(width(27, 0.1));
  });

  it("can be 0, for a curve that is known", () => {
    expect(width(null, 0)).toBeLessThan(width(null, 0.1));
    expect(value("SETCHANCE", 85, 5, 100, null, null, 0)).not.toBe(value("SETCHANCE", 85, 5, 100));
  });

  it("is a fraction, not percent", () => {
    const message = "curveSd is 25; expected a fraction from 0 to 1, such as 0.25";
    const trend = call("STRENGTHTREND", days, 100, 8, 2, null, null, null, null, null, 25);
    expect(messageOf(trend)).toContain(message);
    expect(shown(value("SETCHANCE", 85, 5, 100, null, null, 25))).toContain(message);
  });
});

describe("SQUADTREND", () => {
  const log: unknown[][] = [
    ["lifter", "lift", "date", "load", "reps", "left"],
    ["Ada", "Squat", 46000, 100, 5, "2"],
    ["Bo", "Squat", 46000, 120, 5, "2"],
    ["Ada", "Squat", 46003, 102.5, 5, "2"],
    ["ada", "squat", 46007, 105, 5, "2"],
    ["Bo", "Squat", 46007, 122.5, 5, ""],
    ["Bo", "Squat", 46010, "inj", "", ""],
    ["Cy", "Squat", 46010, "", "", ""],
  ];
  const columns = (...names: string[]) => {
    const places = names.map((name) => elementAt(log, 0).indexOf(name));
    return log.map((row) => places.map((place) => elementAt(row, place)));
  };
  const load = columns("load");
  const [date, reps, left] = ["date", "reps", "left"].map((name) => columns(name));

  it("has a row a lifter and lift with what STRENGTHTREND says of each", () => {
    const rows = call("SQUADTREND", columns("lifter", "lift"), date, load, reps, left);
    expect(rows[0]).toEqual([
      "lifter",
      "lift",
      "days",
      "sets",
      "today",
      "low",
      "high",
      "rise",
      "chance of rise",
    ]);
    const parts = [["days", "sets", "today", "low", "high", "rise", "chance of rise"]];
    const own = [[46000], [46003], [46007]];
    const ada = call("STRENGTHTREND", own, [[100], [102.5], [105]], 5, 2, ...blanks(6), parts);
    expect(rows[1]).toEqual(["Ada", "Squat", ...only(ada)]);
  });

  it("says of a log too short only how long it is, and names nobody without a set", () => {
    const [, , ...rest] = call("SQUADTREND", columns("lifter"), date, load, reps, left);
    // A set without a reserve does not count where reserves are given.
    expect(rest).toEqual([["Bo", 1, 1, "", "", "", "", ""]]);
  });

  it("names the row that cannot be right", () => {
    const wrong = load.map((row, at) => (at === 3 ? ["80kg"] : row));
    const [problem] = only(call("SQUADTREND", columns("lifter"), date, wrong, reps, left));
    expect(shown(problem)).toMatch(/^#VALUE! the 4th row of .*80kg/);
  });
});

describe("RISECOMPARE", () => {
  const days = [46000, 46002, 46005, 46010, 46012, 46015].map((day) => [day]);
  const loads = [100, 100, 101, 105, 107.5, 110].map((load) => [load]);
  const compare = (change: unknown, ...rest: unknown[]) =>
    call("RISECOMPARE", change, days, loads, 5, 2, ...rest);

  it("is a report of both rises and their difference", () => {
    const labels = compare(46010).map(([label]) => label);
    expect(labels).toEqual([
      "before",
      "before low",
      "before high",
      "after",
      "after low",
      "after high",
      "difference",
      "low",
      "high",
      "chance of a faster rise",
      "days before",
      "days after",
      "sets",
    ]);
    const factor = (label: string) =>
      1 + (cellAt(compare(46010, ...blanks(6), label), 0, 0) as number);
    expect(factor("difference")).toBeCloseTo(factor("after") / factor("before"), 12);
  });

  it("takes a Date for the change, and waits for one", () => {
    expect(compare(new Date(1899, 11, 30 + 46010))).toEqual(compare(46010));
    expect(compare("")).toEqual([[""]]);
  });

  it("is #N/A where one side has too few days", () => {
    expect(messageOf(compare(46002))).toMatch(/^#N\/A .*found 1 and 5/);
  });
});

describe("RELATIVESTRENGTH", () => {
  it("takes the exponent as a fraction or as text", () => {
    expect(value("RELATIVESTRENGTH", 180, 90, "0,5")).toBe(value("RELATIVESTRENGTH", 180, 90, 0.5));
    expect(value("RELATIVESTRENGTH", 180, 90, -1)).toBeInstanceOf(CellError);
  });

  it("waits for a body mass", () => {
    expect(call("RELATIVESTRENGTH", [[180], [170]], [[90], [""]])).toEqual([[2], [""]]);
  });
});
