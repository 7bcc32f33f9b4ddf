import { describe, expect, test } from "vitest";
import { implementations } from "../../src/functions/implementations";
import { BLANKS } from "./blanks";
import { messageOf } from "./catalogue";

const { RESERVECHECK } = implementations;

const column = (...values: unknown[]) => values.map((value) => [value]);

/** Lifter, week, rep at the call, called reserve, reps to failure. */
const CALLS = [
  ["Lifter", "Week", "Rep", "Called", "To failure"],
  ["Ines", 1, 5, 2, 10], // 3 more than called
  ["Marit", 1, 6, 3, 10], // 1 more
  ["Ines", 2, 5, 2, 8], // 1 more
  ["Marit", 2, 6, 3, 8], // 1 fewer
];
const part = (calls: readonly (readonly unknown[])[], at: number) => calls.map((row) => [row[at]]);

const check = (
  calls: readonly (readonly unknown[])[],
  { lifter = false, by = false, confidence, label }: Record<string, unknown> = {},
) =>
  RESERVECHECK(
    part(calls, 2),
    part(calls, 3),
    part(calls, 4),
    lifter ? part(calls, 0) : null,
    by ? part(calls, 1) : null,
    confidence,
    label,
  );

describe("the report", () => {
  test("lists its values in order, without a heading", () => {
    const report = check(CALLS);
    expect(report.map(([label]) => label)).toEqual([
      "n",
      "dropped",
      "bias",
      "sd",
      "mean miss",
      "low",
      "high",
      "agree low",
      "agree high",
      "p",
    ]);
    expect(Object.fromEntries(report)).toMatchObject({
      n: 4,
      dropped: 0,
      bias: 1,
      "mean miss": 1.5,
    });
  });

  test("gives one part, or parts in the shape of their labels", () => {
    expect(check(CALLS, { label: "Bias" })).toEqual([[1]]);
    expect(check(CALLS, { label: [["n", "mean miss"]] })).toEqual([[4, 1.5]]);
  });

  test("has empty cells where one call has no spread, and the reason where a part is asked for", () => {
    const one = CALLS.slice(1, 2);
    expect(check(one).map(([, value]) => value)).toEqual([1, 0, 3, "", 3, "", "", "", "", ""]);
    expect(messageOf(check(one, { label: "sd" }))).toBe("#N/A a single value has no spread");
  });

  test("is #N/A without a complete row, and an empty cell for a single blank call", () => {
    expect(messageOf(check([...CALLS.slice(0, 1), ["Ines", 1, 5, "", ""]]))).toBe("");
    expect(messageOf(RESERVECHECK(column(5, 5), column("", ""), column(9, 9)))).toContain("#N/A");
    expect(RESERVECHECK("", "", "")).toEqual([[""]]);
  });
});

describe("with lifters", () => {
  test("the bias is the mean of the lifters' means, and n counts sets", () => {
    // Means 2 and 0; within 2 a lifter, MSB 4, so between is (4 - 2) / 2.
    const values = Object.fromEntries(check(CALLS, { lifter: true }));
    expect(values).toMatchObject({ n: 4, bias: 1, "mean miss": 1.5 });
    expect(values.sd).toBeCloseTo(Math.sqrt(3), 12);
    expect(values["agree high"]).toBeCloseTo(1 + 1.96 * Math.sqrt(3), 12);
  });

  test("a single lifter is #N/A, and the message says what to do", () => {
    const alone = CALLS.filter(([lifter]) => lifter !== "Marit");
    expect(messageOf(check(alone, { lifter: true }))).toContain(
      "#N/A lifter names a single lifter",
    );
  });

  test("a lifter is the same whatever the case", () => {
    const shouted = CALLS.map((row, at) => (at === 3 ? ["INES ", ...row.slice(1)] : row));
    expect(check(shouted, { lifter: true })).toEqual(check(CALLS, { lifter: true }));
  });

  test("a call by nobody is dropped", () => {
    const nobody = [...CALLS, ["", 2, 5, 2, 7], [0, 2, 5, 2, 7]];
    const values = Object.fromEntries(check(nobody, { lifter: true }));
    expect(values).toMatchObject({ n: 4, dropped: 2, bias: 1 });
  });
});

describe("by week", () => {
  test("is a table that shows whether the calls get better", () => {
    const result = check(CALLS, { by: true });
    expect(result[0]).toEqual(["Week", "n", "bias", "sd", "mean miss", "low", "high"]);
    expect(
      result.slice(1).map((row) => row.filter((_cell, at) => [0, 1, 2, 4].includes(at))),
    ).toEqual([
      [1, 2, 2, 2],
      [2, 2, 0, 1],
    ]);
  });

  test("takes the components of the lifters in each week; empty cells where a week has one", () => {
    const [, first, second] = check(CALLS.slice(0, 4), { by: true, lifter: true });
    expect(first?.slice(0, 3)).toEqual([1, 2, 2]);
    expect(first?.[3]).toBeCloseTo(Math.SQRT2, 12);
    expect(second).toEqual([2, 1, 1, "", 1, "", ""]);
  });

  test("takes no part, for the table has none", () => {
    expect(messageOf(check(CALLS, { by: true, label: "bias" }))).toContain(
      "expected one of the two",
    );
  });
});

describe("dropped rows", () => {
  test("hold something but not everything; a blank row is not there", () => {
    const gaps = [
      ...CALLS,
      ["Ines", 3, 5, "", 9],
      ["Ines", 3, "DNS", "", ""],
      ["Ines", 3, "", "", ""],
      ["", "", "", "", ""],
    ];
    expect(check(gaps, { label: "n" })).toEqual([[4]]);
    expect(check(gaps, { label: "dropped" })).toEqual([[2]]);
  });

  test.each(BLANKS)(
    "are the same where blanks come as $host passes them",
    ({ blank, textBlank }) => {
      const gaps = [
        ...CALLS,
        ["Ines", 3, 5, textBlank, 9],
        ["Ines", 3, 5, 2, blank],
        ["", "", blank, textBlank, blank],
        ["", "", blank, blank, blank],
      ];
      expect(check(gaps, { label: [["n", "dropped"]] })).toEqual([[4, 2]]);
    },
  );
});

describe("a set that cannot be right is an error naming its row", () => {
  const withRow = (row: readonly unknown[]) => messageOf(check([...CALLS, row]));

  test.each([
    [
      ["Ines", 3, 8, 1, 7],
      "#VALUE! the 6th row: repsToFailure is 7, fewer than the 8 reps at the call",
    ],
    [["Ines", 3, 5, "2-3", 9], '#VALUE! the 6th row of calledReserve is text, "2-3"'],
    [
      ["Ines", 3, 45992, 2, 9],
      "#VALUE! the 6th row of repAtCall is 45992, which looks like a date",
    ],
    [["Ines", 3, 5, 2, "#N/A"], "#VALUE! the 6th row of repsToFailure holds #N/A"],
  ])("%j", (row, message) => {
    expect(withRow(row)).toContain(message);
  });
});

test("a confidence that is no fraction is refused", () => {
  expect(messageOf(check(CALLS, { confidence: 95 }))).toContain("confidence is 95");
});
