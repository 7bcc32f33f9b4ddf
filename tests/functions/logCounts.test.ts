import { describe, expect, test } from "vitest";
import { implementations } from "../../src/functions/implementations";
import { BLANKS } from "./blanks";
import { messageOf, value } from "./catalogue";

const { CLOSESETS, MUSCLESETS, VOLUMELOAD, SESSIONLOAD, WEEKMONOTONY, WEEKSTRAIN } =
  implementations;

const column = (...values: unknown[]) => values.map((value) => [value]);

describe("CLOSESETS", () => {
  test("counts the sets that rows stand for", () => {
    expect(CLOSESETS(column(8, 8, 6), column(4, 4.5, 0), column(3, 2, 2))).toEqual([[5]]);
  });

  test("counts by key, under the log's own headings", () => {
    const result = CLOSESETS(
      column("Reps", 8, 8, 6),
      column("Reserve", 4, 5, 0),
      null,
      null,
      column("Lift", "Squat", "Press", "Squat"),
    );
    expect(result).toEqual([
      ["Lift", "close sets"],
      ["Squat", 2],
      ["Press", 0],
    ]);
  });

  test("gives an empty cell for a single row that is not filled in yet", () => {
    expect(CLOSESETS(8, "")).toEqual([[""]]);
    expect(CLOSESETS("", 2)).toEqual([[""]]);
    expect(CLOSESETS(8, 0)).toEqual([[1]]);
  });

  test.each(BLANKS)('takes a blank reserve as $host passes it with &"" for not recorded', (way) => {
    expect(CLOSESETS(column(8, 8, way.blank), column(2, way.textBlank, way.textBlank))).toEqual([
      [1],
    ]);
  });

  test("names the row of a date in the reserve", () => {
    expect(messageOf(CLOSESETS(column("Reps", 8), column("Reserve", 45992)))).toContain(
      "the 2nd row of reserve",
    );
  });
});

describe("MUSCLESETS", () => {
  const SHARES = [
    ["Exercise", "Quads", "Back", "Biceps", ""],
    ["Back squat", 1, 0, "", ""],
    ["Bench pull", "–", 1, "0,5", ""],
    ["", "", "", "", ""],
  ];

  test("counts by muscle in the order of the shares; case and outer blanks do not matter", () => {
    const result = MUSCLESETS(
      column("back squat", "BENCH PULL ", "Bench pull"),
      column(5, 8, 8),
      SHARES,
      column(2, 1, 6),
      column(3, 4, 4),
    );
    expect(result).toEqual([
      ["muscle", "close sets"],
      ["Quads", 3],
      ["Back", 4],
      ["Biceps", 2],
    ]);
  });

  test("with by gives a row a key and a column a muscle", () => {
    const result = MUSCLESETS(
      column("Lift", "Back squat", "Bench pull"),
      column("Reps", 5, 8),
      SHARES,
      column("Reserve", 2, 1),
      null,
      null,
      column("Lifter", "Ines", "Marit"),
    );
    expect(result).toEqual([
      ["Lifter", "Quads", "Back", "Biceps"],
      ["Ines", 1, 0, 0],
      ["Marit", 0, 1, 0.5],
    ]);
  });

  test("counts every set where no reserve column is given, and none whose reserve is blank", () => {
    const log = [column("Back squat", "Back squat"), column(5, 5), SHARES];
    expect(MUSCLESETS(...log)[1]).toEqual(["Quads", 2]);
    expect(MUSCLESETS(...log, column(3, ""))[1]).toEqual(["Quads", 1]);
  });

  test("names an exercise that the shares do not list, with its row, close set or not", () => {
    const exercises = column("Lift", "Back squat", "Sled push");
    const message = messageOf(
      MUSCLESETS(exercises, column("Reps", 5, 5), SHARES, column("Reserve", 2, 9)),
    );
    expect(message).toBe('#VALUE! the 3rd row: shares does not list the exercise "Sled push"');
  });

  test("passes over an exercise in a row without reps, and refuses reps without an exercise", () => {
    expect(MUSCLESETS(column("Back squat", "Sled push"), column(5, "DNS"), SHARES)[1]).toEqual([
      "Quads",
      1,
    ]);
    const withoutName = MUSCLESETS(column("Back squat", ""), column(5, 5), SHARES);
    expect(messageOf(withoutName)).toContain("the 2nd row: exercise is blank");
  });

  describe("refuses shares that cannot be right", () => {
    const sharesMessage = (shares: unknown[][]) =>
      messageOf(MUSCLESETS(column("Squat", "Squat"), column(5, 5), shares));

    test.each([
      ["no headings", [["Squat", 1, 0]], "column 2 has no heading"],
      ["no exercises", [["Exercise", "Quads"]], "shares is no table"],
      [
        "a share above 1",
        [
          ["Exercise", "Quads"],
          ["Squat", 2],
        ],
        "the 2nd row of shares: the share is 2",
      ],
      [
        "a cross for a share",
        [
          ["Exercise", "Quads"],
          ["Squat", "x"],
        ],
        'the 2nd row of shares: the share is text, "x"',
      ],
      [
        "an error",
        [
          ["Exercise", "Quads"],
          ["Squat", "#REF!"],
        ],
        "the 2nd row of shares holds #REF!",
      ],
      [
        "shares of nothing",
        [
          ["Exercise", "Quads"],
          ["", 1],
        ],
        "the 2nd row of shares has shares but no exercise",
      ],
      [
        "an exercise twice",
        [
          ["Exercise", "Quads"],
          ["Squat", 1],
          ["squat ", 0.5],
        ],
        'the 3rd row of shares lists "squat " a second time',
      ],
    ])("%s", (_what, shares, message) => {
      expect(sharesMessage(shares)).toContain(message);
    });
  });
});

test("VOLUMELOAD, CLOSESETS and LOGSUMMARY agree with each other by key", () => {
  const by = column("a", "b", "a", "b");
  const [load, reps] = [column(100, 60, 110, "BW"), column(5, 8, 3, 10)];
  const [reserve, sets] = [column(2, "", 5, 1), column(3, 2, "", 2)];
  const summary = implementations.LOGSUMMARY(by, load, reps, reserve, sets).slice(1);
  expect(VOLUMELOAD(load, reps, sets, by).slice(1)).toEqual(
    summary.map(([key, , , volume]) => [key, volume]),
  );
  expect(CLOSESETS(reps, reserve, sets, null, by).slice(1)).toEqual(
    summary.map(([key, , , , close]) => [key, close]),
  );
});

describe("SESSIONLOAD", () => {
  test("lifts over rows, and leaves a row that is not filled in empty", () => {
    expect(SESSIONLOAD(column("RPE", 7, "", 5), column("Minutes", 60, 45, 0))).toEqual(
      column("", 420, "", ""),
    );
  });

  test("refuses an RPE above 10, in its own row", () => {
    const [first, ...rest] = SESSIONLOAD(column(7, 70), column(60, 60));
    expect(first).toEqual([420]);
    expect(messageOf(rest)).toContain(
      "the 2nd row of rpe is 70; expected an RPE above 0, up to 10",
    );
  });
});

describe("WEEKMONOTONY and WEEKSTRAIN", () => {
  const WEEK = [300, 450, 0, 600, 200, 500, 0];
  // R 4.2.2: mean(x) / sd(x) on invented loads, definition of Foster 1998.
  const MONOTONY = 1.22638748;

  test.each(BLANKS)(
    "take every cell for a day, a blank as $host passes it for rest",
    ({ blank }) => {
      const week = WEEK.map((load) => (load === 0 ? blank : load));
      expect(value("WEEKMONOTONY", column(...week))).toBeCloseTo(MONOTONY, 8);
      expect(value("WEEKMONOTONY", [week])).toBeCloseTo(MONOTONY, 8);
    },
  );

  test("take text without digits for rest too, in the first cell as well", () => {
    const week = ["rest", 300, 450, 600, 200, 500, "–"];
    expect(value("WEEKMONOTONY", column(...week))).toBeCloseTo(MONOTONY, 8);
    expect(value("WEEKSTRAIN", column(...week))).toBeCloseTo(2050 * MONOTONY, 4);
  });

  test("name the cell that is no load", () => {
    expect(messageOf(WEEKMONOTONY(column(300, "5h", 200)))).toContain(
      "the 2nd row of loads is text",
    );
    expect(messageOf(WEEKSTRAIN([[300, -5, 200]]))).toContain("the 2nd column of loads is -5");
    expect(messageOf(WEEKSTRAIN(column(300, 200, "#REF!")))).toBe(
      "#VALUE! the 3rd row of loads holds #REF!",
    );
  });

  test("are #N/A for one day, or for a week that is the same every day; one blank cell waits", () => {
    expect(messageOf(WEEKMONOTONY(300))).toContain("#N/A monotony needs at least 2 days");
    expect(messageOf(WEEKSTRAIN(column(0, 0, 0)))).toContain("#N/A every day has the same load");
    expect(WEEKMONOTONY("")).toEqual([[""]]);
  });
});
