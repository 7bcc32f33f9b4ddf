import { describe, expect, it } from "vitest";
import { implementations } from "../../../src/functions/implementations";
import { athleteChanges, type AthleteChanges } from "../../../src/pane/pictures/athleteChanges";
import { doseResponse, type DoseResponse } from "../../../src/pane/pictures/doseResponse";
import { forest, type Forest } from "../../../src/pane/pictures/forest";
import { groupChanges, type GroupChanges } from "../../../src/pane/pictures/groupChanges";
import { pictures } from "../../../src/pane/pictures";
import { isProblem, type Picture } from "../../../src/pane/pictures/picture";
import {
  reserveAgreement,
  type ReserveAgreement,
} from "../../../src/pane/pictures/reserveAgreement";
import { strengthTrend, type StrengthTrend } from "../../../src/pane/pictures/strengthTrend";
import { weeklyLoad } from "../../../src/pane/pictures/weeklyLoad";
import type { WeeklyLoad } from "../../../src/pane/pictures/weeks";
import { named, only } from "../../present";
import { reserveCalls, setsOf, squats } from "./demo";
import {
  awkwardSelections,
  blocksAndWeeks,
  demoSelections,
  squatChanges,
  studies,
  summaryBy,
  typicalError,
} from "./selections";

function dataOf<Data>(picture: Picture<Data>, values: readonly (readonly unknown[])[]): Data {
  const read = picture.read(values);
  if (isProblem(read)) throw new Error(read.problem);
  return read;
}

function problemOf(picture: Picture, values: readonly (readonly unknown[])[]): string {
  const read = picture.read(values);
  return isProblem(read) ? read.problem : "no problem";
}

const demo = (id: string) => demoSelections.find((one) => one.id === id)!.values;
const column = (values: readonly (readonly unknown[])[], at: number) =>
  values.map((row) => [row[at]]);
const part = (id: string, name: string, ...args: unknown[]) =>
  new Map(named(implementations, id)(...args) as [string, unknown][]).get(name);

describe("every picture", () => {
  it("has an id of its own, a title, and says what to select", () => {
    expect(new Set(pictures.map(({ id }) => id)).size).toBe(9);
    for (const { title, describe } of pictures) {
      expect(title).not.toBe("");
      expect(describe).toMatch(/\.$/);
    }
  });

  it.each(pictures.map((picture) => [picture.id, picture] as const))(
    "%s says of an empty selection, and of one with too many columns, what was expected",
    (_id, picture) => {
      expect(problemOf(picture, [[null, ""], [""]])).toMatch(/expected/);
      expect(problemOf(picture, [[1, 2, 3, 4, 5, 6, 7, 8, 9, 10]])).toMatch(/expected/);
    },
  );

  it.each([...demoSelections, ...awkwardSelections].map((one) => [one.id, one.values] as const))(
    "%s reads the same with blank rows at the end and a blank column",
    (id, values) => {
      const picture = pictures.find((one) => one.id === id)!;
      const padded = [...values.map((row) => [row[0], null, ...row.slice(1)]), [null], ["", ""]];
      expect(picture.read(padded)).toEqual(dataOf(picture, values));
    },
  );
});

describe("strength trend", () => {
  const sets = demo("strength-trend");
  const table = implementations.STRENGTHTREND(
    column(sets, 0),
    column(sets, 1),
    column(sets, 2),
    column(sets, 3),
  );
  const rows = table.slice(1);

  it("shows what STRENGTHTREND gives, from the log and from its table alike", () => {
    const fromLog = dataOf<StrengthTrend>(strengthTrend, sets);
    expect(fromLog.units).toBe("kg");
    const days = fromLog.days.map(({ date, oneRepMax, low, high }) => [date, oneRepMax, low, high]);
    expect(days).toEqual(rows);
    expect(rows.length).toBeGreaterThan(10);
    expect(dataOf(strengthTrend, table).days).toEqual(fromLog.days);
    expect(dataOf(strengthTrend, rows).days).toEqual(fromLog.days);
  });

  it("finds its columns by their headings among others", () => {
    const wide = setsOf("Callum Reid", "Back squat").map((row, at) => [
      at === 0 ? "note" : "x",
      ...row,
      "y",
      "z",
    ]);
    expect(dataOf(strengthTrend, wide).days).toHaveLength(rows.length);
  });

  it("names the row of a cell that is no number, and a table whose columns are mixed up", () => {
    expect(
      problemOf(strengthTrend, [
        ["date", "one-rep max", "low", "high"],
        [46000, "140kg", 135, 146],
      ]),
    ).toMatch(/the 2nd row of one-rep max is text, "140kg"/);
    expect(problemOf(strengthTrend, [[46000, 135, 140, 146]])).toMatch(/outside its low and high/);
  });

  it("passes on why the function gives no trend", () => {
    expect(problemOf(strengthTrend, sets.slice(0, 3))).toMatch(/day/);
  });
});

describe("weekly load", () => {
  it("shows the volume load and close sets of LOGSUMMARY, week by week", () => {
    const table = summaryBy(blocksAndWeeks);
    const { weeks, by } = dataOf<WeeklyLoad>(weeklyLoad, table);
    expect(by).toBe("week");
    expect(
      weeks.map((week) => [week.block, Number(week.label), week.volumeLoad, week.closeSets]),
    ).toEqual(table.slice(1).map((row) => [row[0], row[1], row[4], row[5]]));
    expect(weeks).toHaveLength(11);
  });

  it("keeps a week without close sets as a gap, and names one by its first day", () => {
    const { weeks } = dataOf<WeeklyLoad>(weeklyLoad, [
      ["week of", "volume load", "close sets"],
      [46027, 12000, ""],
      ["", "", ""],
      [46034, 9000, 14],
    ]);
    expect(weeks).toEqual([
      { block: undefined, label: "5 Jan", volumeLoad: 12000, closeSets: null },
      { block: undefined, label: "12 Jan", volumeLoad: 9000, closeSets: 14 },
    ]);
  });

  it("says when there are no headings, and when there are too many keys", () => {
    expect(problemOf(weeklyLoad, [[1, 12000, 14]])).toMatch(
      /table of LOGSUMMARY with its headings/,
    );
    const keyed = summaryBy(blocksAndWeeks).map((row) => ["x", ...row]);
    expect(problemOf(weeklyLoad, keyed)).toMatch(/found 3 columns before the sums/);
  });
});

describe("reserve agreement", () => {
  const called = [column(reserveCalls, 4), column(reserveCalls, 5), column(reserveCalls, 6)];

  it("draws the bias and the limits of RESERVECHECK, lifter by lifter where lifters are named", () => {
    const data = dataOf<ReserveAgreement>(reserveAgreement, reserveCalls);
    const given = [...called, column(reserveCalls, 2)];
    expect(data.byLifter).toBe(true);
    expect(data.bias).toBe(part("RESERVECHECK", "bias", ...given));
    expect(data.limits?.low).toBe(part("RESERVECHECK", "agree low", ...given));
    expect(data.limits?.high).toBe(part("RESERVECHECK", "agree high", ...given));
    expect(data.biasInterval?.low).toBe(part("RESERVECHECK", "low", ...given));
    expect(data.calls).toHaveLength(data.n);
    expect(data.dropped).toBe(part("RESERVECHECK", "dropped", ...given));
  });

  it("draws a dot a set: the true reserve is the reps that were left at the call", () => {
    const { calls } = dataOf<ReserveAgreement>(reserveAgreement, [
      [4, 3, 9],
      [5, "DNS", 8],
      [6, 0, 6],
    ]);
    expect(calls).toEqual([
      { called: 3, real: 5, error: 2 },
      { called: 0, real: 0, error: 0 },
    ]);
  });

  it("takes a single lifter's own calls as they are, and one call has no limits", () => {
    const one = dataOf<ReserveAgreement>(reserveAgreement, [
      ["rep at call", "called reserve", "reps to failure", "lifter"],
      [4, 3, 9, "Ines"],
    ]);
    expect(one.byLifter).toBe(false);
    expect(one.bias).toBe(2);
    expect(one.limits).toBeUndefined();
  });

  it("names the row where the set was shorter than the call", () => {
    expect(
      problemOf(reserveAgreement, [
        [4, 3, 9],
        [8, 2, 7],
      ]),
    ).toMatch(/the 2nd row: repsToFailure is 7/);
  });
});

describe("athlete changes", () => {
  it("takes each change and its reading from CHANGESCORE, and the band from MDC", () => {
    const { athletes, leftOut, units } = dataOf<AthleteChanges>(
      athleteChanges,
      squatChanges("typical error", typicalError),
    );
    expect(units).toBe("kg");
    expect(leftOut).toEqual(["Leonie Brandt", "Jonas Weber"]);
    expect(athletes).toHaveLength(squats.length - 2);
    for (const athlete of athletes) {
      const { before, after } = squats.find(({ rower }) => rower === athlete.name)!;
      const score = only(implementations.CHANGESCORE(before, after, typicalError));
      expect(athlete.change).toBe(score[0]);
      expect(athlete.reading).toBe(score.at(-1));
      expect([[athlete.detectable]]).toEqual(implementations.MDC(typicalError));
    }
    const changes = athletes.map(({ change }) => change);
    expect(changes).toEqual([...changes].sort((a, b) => b - a));
  });

  it("takes a column headed as a detectable change for what it says", () => {
    const { athletes } = dataOf<AthleteChanges>(athleteChanges, [
      ["name", "pre", "post", "detectable change"],
      ["Ines", 100, 106, 5],
      ["Marit", 100, 104.9, 5],
    ]);
    expect(athletes.map(({ detectable }) => Number(detectable.toPrecision(12)))).toEqual([5, 5]);
    expect(athletes.map(({ reading }) => reading)).toEqual(["real increase", "within test error"]);
  });

  it("says when no typical error is there, and names the row of a bad score", () => {
    expect(
      problemOf(athleteChanges, [
        ["Ines", 100, 106, null],
        ["Marit", 90, 91, ""],
      ]),
    ).toMatch(/found 3 columns/);
    expect(problemOf(athleteChanges, [["Ines", 100, 106, "DNS"]])).toMatch(
      /no row has a typical error/,
    );
    expect(
      problemOf(athleteChanges, [
        ["Ines", 100, 106, 2],
        ["Marit", 90, "91kg", 2],
      ]),
    ).toMatch(/the 2nd row of after is text, "91kg"/);
  });
});

describe("group changes", () => {
  it("shows both groups' means and the adjusted difference of GROUPCHANGE", () => {
    const values = demo("group-changes");
    const { groups, difference, reading } = dataOf<GroupChanges>(groupChanges, values);
    const given = [column(values, 0), column(values, 1), column(values, 2)];
    const said = (name: string) => part("GROUPCHANGE", name, ...given);
    expect(groups.map(({ name }) => name)).toEqual([said("group A"), said("group B")]);
    expect(groups.map(({ mean }) => mean)).toEqual([said("change A"), said("change B")]);
    expect(groups.map(({ interval }) => interval?.low)).toEqual([said("low A"), said("low B")]);
    expect(groups.map(({ changes }) => changes.length)).toEqual([said("n A"), said("n B")]);
    expect(groups.map(({ lost }) => lost)).toEqual([said("lost A"), said("lost B")]);
    expect(difference).toEqual({
      mean: said("adjusted difference"),
      interval: { low: said("adjusted low"), high: said("adjusted high") },
      adjusted: true,
    });
    expect(reading).toBe(said("reading"));
  });

  it("falls back on the plain difference where nothing can be adjusted, and may have no interval", () => {
    const { difference } = dataOf<GroupChanges>(groupChanges, [
      ["a", 100, 104],
      ["b", 100, 97],
    ]);
    expect(difference).toEqual({ mean: 7, interval: undefined, adjusted: false });
  });

  it("passes on that there must be two groups", () => {
    expect(
      problemOf(groupChanges, [
        ["a", 1, 2],
        ["b", 1, 2],
        ["c", 1, 2],
      ]),
    ).toMatch(/two/);
    expect(
      problemOf(groupChanges, [
        ["a", 1, 2],
        ["b", 1, "DNS"],
      ]),
    ).toMatch(/no athlete of b/);
  });
});

describe("forest", () => {
  it("shows the pooled effect and the prediction of POOLSTUDIES, and each study's own interval", () => {
    const { studies: read, pooled, prediction } = dataOf<Forest>(forest, demo("forest"));
    const given = [column(studies, 2), column(studies, 3)];
    expect(pooled).toEqual({
      estimate: part("POOLSTUDIES", "estimate", ...given),
      low: part("POOLSTUDIES", "low", ...given),
      high: part("POOLSTUDIES", "high", ...given),
    });
    expect(prediction).toEqual({
      low: part("POOLSTUDIES", "predict low", ...given),
      high: part("POOLSTUDIES", "predict high", ...given),
    });
    // 0.39 ± 1.959964 × 0.2
    expect(read[0]?.low).toBeCloseTo(-0.0019928, 6);
    expect(read[0]?.high).toBeCloseTo(0.7819928, 6);
  });

  it("draws one study without a pool, and none of fewer than three studies' predictions", () => {
    const one = dataOf<Forest>(forest, [["Only study", 0.3, 0.1]]);
    expect(one.studies).toHaveLength(1);
    expect(one.pooled).toBeUndefined();
    const two = dataOf<Forest>(forest, [
      ["Study 1", 0.3, 0.1],
      ["Study 2", 0.1, 0.2],
    ]);
    expect(two.pooled).toBeDefined();
    expect(two.prediction).toBeUndefined();
  });

  it("leaves out a study without an effect, keeps a true zero, and names an unnamed one by its row", () => {
    const { studies: read } = dataOf<Forest>(forest, [
      ["study", "effect", "standard error"],
      ["", 0, 0.1],
      ["Study 2", "–", 0.2],
    ]);
    expect(read.map(({ name, effect }) => [name, effect])).toEqual([["row 2", 0]]);
  });

  it("names the row of a standard error below 0", () => {
    expect(problemOf(forest, [["Study 1", 0.3, -0.1]])).toMatch(
      /the 1st row of standard error is -0.1/,
    );
  });
});

describe("dose and response", () => {
  it("draws the line of DOSERESPONSE at the doses that were studied", () => {
    const data = dataOf<DoseResponse>(doseResponse, demo("dose-response"));
    const given = [column(studies, 1), column(studies, 2), column(studies, 3)];
    expect(data.slope).toBe(part("DOSERESPONSE", "slope", ...given));
    expect(data.slopeInterval?.low).toBe(part("DOSERESPONSE", "low", ...given));
    const ends = implementations.DOSERESPONSE(...given, [[4], [12]]).slice(1);
    const points = data.line.map(({ dose, estimate, low, high }) => [dose, estimate, low, high]);
    expect([points.at(0), points.at(-1)]).toEqual(ends.map((row) => row.slice(0, 4)));
    expect(data.dose).toBe("close sets a week");
  });

  it("passes on that three studies are needed", () => {
    expect(
      problemOf(doseResponse, [
        [1, 0.3, 0.1],
        [2, 0.1, 0.2],
      ]),
    ).toMatch(/found 2 studies/);
  });
});
