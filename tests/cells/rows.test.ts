import { describe, expect, it } from "vitest";
import { numberAt, readRows } from "../../src/cells";
import { blanks, column, load, reps, reserve, row, thrownBy } from "./fixtures";

const read = (loads: unknown, counts: unknown, by?: unknown) =>
  readRows(
    { load: { given: loads, quantity: load }, reps: { given: counts, quantity: reps } },
    { by: { given: by, name: "by" } },
  );

describe("columns read row by row", () => {
  it("keep the place of each number, with null where a row holds none", () => {
    const rows = read(column(100, "DNS", "82,5"), column(5, 3, ""));
    expect(rows.count).toBe(3);
    expect(rows.firstRow).toBe(1);
    expect(rows.numbers).toEqual({ load: [100, null, 82.5], reps: [5, 3, null] });
  });

  it.each(blanks)("read the blanks of %s the same", (_host, blank) => {
    expect(read(column(100, blank), column(blank, 5)).numbers).toEqual({
      load: [100, null],
      reps: [null, 5],
    });
  });

  it("do not exist where they were left out", () => {
    const rows = read(undefined, column(5, 3), null);
    expect(rows.numbers.load).toBeUndefined();
    expect(rows.labels.by).toBeUndefined();
    expect(rows.numbers.reps).toEqual([5, 3]);
  });

  it("stretch a single cell", () => {
    expect(read(100, column(5, 3)).numbers.load).toEqual([100, 100]);
    expect(read(column(100, 90), [[5]]).numbers.reps).toEqual([5, 5]);
  });

  it("may lie along a row, and a column beside it", () => {
    expect(read(row(100, 90), row(5, 3)).numbers).toEqual({ load: [100, 90], reps: [5, 3] });
    expect(read(row(100, 90), column(5, 3)).numbers).toEqual({ load: [100, 90], reps: [5, 3] });
    const { labels } = read(row(100, 90), row(5, 3), row("Ann", "Ben"));
    expect(labels.by?.cells).toEqual([["Ann"], ["Ben"]]);
  });

  it("are one row for single cells", () => {
    const rows = read(100, 5, "Ann");
    expect(rows.count).toBe(1);
    expect(rows.labels.by?.cells).toEqual([["Ann"]]);
  });

  it("are no block", () => {
    expect(
      thrownBy(() =>
        read(
          [
            [1, 2],
            [3, 4],
          ],
          column(5, 3),
        ),
      ),
    ).toBe("#VALUE! load has 2 rows of 2 columns; expected one column");
  });

  it.each([
    ["numbers", column(1, 2, 3), column(1, 2), undefined, "load has 3 rows and reps has 2 rows"],
    [
      "a label and numbers",
      column(1, 2, 3),
      5,
      column("a", "b"),
      "load has 3 rows and by has 2 rows",
    ],
    ["rows that lie", row(1, 2, 3), row(1, 2), undefined, "load has 3 rows and reps has 2 rows"],
    [
      "a row of labels",
      column(1, 2),
      5,
      row("a", "b", "c"),
      "load has 2 rows and by has 1 row of 3 columns",
    ],
    [
      "a block of labels",
      column(1, 2),
      5,
      [
        ["a", "b"],
        ["c", "d"],
        ["e", "f"],
      ],
      "load has 2 rows and by has 3 rows of 2 columns",
    ],
    [
      "labels for one number",
      100,
      5,
      [
        ["a", "b"],
        ["c", "d"],
      ],
      undefined,
    ],
  ])("have the same rows, or name the two that differ: %s", (_kind, a, b, by, sizes) => {
    const thrown = thrownBy(() => read(a, b, by));
    expect(thrown).toBe(
      sizes === undefined
        ? "nothing was thrown"
        : `#VALUE! ${sizes}; expected the same rows in both`,
    );
  });
});

describe("a bad cell among the rows", () => {
  it("is the error of the whole call, named by the row of the range", () => {
    expect(thrownBy(() => read(column(100, "80kg"), column(5, 3)))).toBe(
      '#VALUE! the 2nd row of load is text, "80kg"; expected a load above 0',
    );
    expect(thrownBy(() => read(column("load", 100, 90), column("reps", 5, 45292)))).toBe(
      "#VALUE! the 3rd row of reps is 45292, which looks like a date; expected a number of reps above 0",
    );
    expect(thrownBy(() => read(column(100, true), column(5, 3)))).toContain(
      "the 2nd row of load is TRUE",
    );
  });

  it("is the first of several, which are counted, and the next two named", () => {
    expect(thrownBy(() => read(column(100, "80kg", 90), column(5, 3, "4x")))).toBe(
      '#VALUE! the 2nd row of load is text, "80kg"; expected a load above 0 ' +
        "(2 bad cells in all, next the 3rd row of reps)",
    );
    // Loads are read before reps; what is named first is what stands first.
    const loads = column(100, 90, 80, "70kg", "60kg");
    expect(thrownBy(() => read(loads, column("5x", -3, 5, 5, "#N/A")))).toBe(
      '#VALUE! the 1st row of reps is text, "5x"; expected a number of reps above 0 ' +
        "(5 bad cells in all, next the 2nd row of reps and the 4th row of load)",
    );
  });

  it("is named once where it stretches over all rows", () => {
    expect(thrownBy(() => read(column(100, 90), "5x"))).toBe(
      '#VALUE! the 1st row of reps is text, "5x"; expected a number of reps above 0',
    );
  });

  it("is found even in a row that is not complete", () => {
    expect(thrownBy(() => read(column("", 100), column("5x", 3)))).toContain(
      "the 1st row of reps is text",
    );
  });

  it("is #VALUE! with the error it holds, for leaving its row out would be unseen", () => {
    for (const held of ["#N/A", "#DIV/0!", "#REF!"]) {
      expect(thrownBy(() => read(column(100, 90, held), column(5, 3, 3)))).toBe(
        `#VALUE! the 3rd row of load holds ${held}`,
      );
    }
    const object = { type: "Error", basicValue: "#N/A" };
    expect(thrownBy(() => read(column(100, object), column(5, 3)))).toBe(
      "#VALUE! the 2nd row of load holds #N/A",
    );
  });
});

describe("a header row", () => {
  it("is skipped, and names the columns", () => {
    const rows = read(column("load (kg)", 100), column("reps", 5), [
      ["lifter", "week"],
      ["Ann", 1],
    ]);
    expect(rows.count).toBe(1);
    expect(rows.firstRow).toBe(2);
    expect(rows.heading("load")).toBe("load (kg)");
    expect(rows.labels.by).toEqual({ headings: ["lifter", "week"], cells: [["Ann", 1]] });
  });

  it("names nothing where there is none", () => {
    const rows = read(column(100, 90), column(5, 3), column("Ann", "Ben"));
    expect(rows.heading("load")).toBeUndefined();
    expect(rows.labels.by).toEqual({ headings: [undefined], cells: [["Ann"], ["Ben"]] });
    expect(read(column("DNS", 90), column(5, 3)).heading("load")).toBeUndefined();
  });

  it("names no column that was left out", () => {
    expect(read(undefined, column("reps", 5)).heading("load")).toBeUndefined();
  });

  it("may be the only row", () => {
    const rows = read(column("load", ""), column("reps", ""));
    expect(rows.count).toBe(1);
    expect(rows.numbers).toEqual({ load: [null], reps: [null] });
  });

  it("is text over every number; a number among the headings makes it a row of data", () => {
    expect(read(column("load", 100), column(8, 5)).firstRow).toBe(1);
    expect(read(column("load", 100), column("reps", 5), column(3, 4)).firstRow).toBe(1);
    const labels = [
      ["lifter", 3],
      ["Ann", 1],
    ];
    expect(read(column("load", 100), column("reps", 5), labels).firstRow).toBe(1);
  });

  it.each(blanks)("may leave a blank of %s over the labels", (_host, blank) => {
    const rows = read(column("10RM", 100), column("reps", 5), column(blank, "Ann"));
    expect(rows.firstRow).toBe(2);
    expect(rows.labels.by).toEqual({ headings: [undefined], cells: [["Ann"]] });
  });

  it.each(["Ann", 3])("has no say from one label that stands for every row (%s)", (label) => {
    const rows = read(column("10RM", 100, 90), column("reps", 5, 3), label);
    expect(rows.firstRow).toBe(2);
    expect(rows.labels.by).toEqual({ headings: [undefined], cells: [[label], [label]] });
  });

  it("has no say from a single number that stands for every row", () => {
    const rows = read(column("10RM", 100, 90), 5);
    expect(rows.numbers).toEqual({ load: [100, 90], reps: [5, 5] });
    expect(rows.heading("reps")).toBeUndefined();
  });
});

describe("labels that may be left blank", () => {
  const labelsOf = (given: unknown, canBeBlank: boolean) =>
    readRows(
      { reps: { given: column(5, 3), quantity: reps } },
      { by: { given, name: "by", canBeBlank } },
    ).labels.by?.cells;

  it.each(blanks)("are not there in one blank cell of %s", (_host, blank) => {
    expect(labelsOf([[blank]], true)).toBeUndefined();
    expect(labelsOf([[blank]], false)).toEqual([[blank], [blank]]);
  });

  it.each([["Ann"], [1]])("are there in one cell that holds one: %s", (label) => {
    expect(labelsOf(label, true)).toEqual([[label], [label]]);
  });

  it("are there in several cells, all blank or not", () => {
    expect(labelsOf(column("", ""), true)).toEqual([[""], [""]]);
  });
});

describe("whether a row is there", () => {
  it("is decided by its numbers; a missing value is something, and so is a zero that is a value", () => {
    const rows = readRows({
      load: { given: column("load", 100, "", "DNS", 0, ""), quantity: load },
      reserve: { given: column("reserve", "", "", "", "", 0), quantity: reserve },
    });
    expect([0, 1, 2, 3, 4].map((row) => rows.isThere(row))).toEqual([
      true,
      false,
      true,
      false,
      true,
    ]);
  });

  it("is not decided by one number that stands for every row", () => {
    const rows = read(column("", 100), 5);
    expect([0, 1].map((row) => rows.isThere(row))).toEqual([false, true]);
  });
});

it("a column has no number where its row holds none, nor where it was left out", () => {
  expect(numberAt([100, null], 0)).toBe(100);
  expect(numberAt([100, null], 1)).toBeNull();
  expect(numberAt([100], 1)).toBeNull();
  expect(numberAt(undefined, 0)).toBeNull();
});

describe("columns far longer than their data", () => {
  it("cost next to nothing", () => {
    const tall = Array.from({ length: 100_000 }, (_row, index) => [index < 3 ? index + 1 : ""]);
    const began = performance.now();
    const rows = read(tall, tall);
    expect(rows.numbers.load?.slice(0, 4)).toEqual([1, 2, 3, null]);
    expect(performance.now() - began).toBeLessThan(5000);
  });
});

it("a zero is kept where it is a value", () => {
  const rows = readRows({ reserve: { given: column(0, "", 2), quantity: reserve } });
  expect(rows.numbers.reserve).toEqual([0, null, 2]);
});
