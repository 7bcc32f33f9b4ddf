import { describe, expect, it } from "vitest";
import {
  commonShape,
  CellError,
  expectRoomFor,
  invalid,
  lift,
  liftOver,
  placeIn,
  recorded,
  required,
  toRange,
} from "../../src/cells";
import { blanks, column, errorText, load, reps, reserve, row, thrownBy } from "./fixtures";

const product = (loads: unknown, counts: unknown) =>
  lift(
    { load: required(loads, load), reps: required(counts, reps) },
    ({ load, reps }) => load * reps,
  );

describe("the shape of a lifted result", () => {
  it("is one cell for single cells", () => {
    expect(product(100, [[5]])).toEqual([[500]]);
  });

  it("stretches a single value along a column, a row and a grid", () => {
    expect(product(column(100, 110), 5)).toEqual([[500], [550]]);
    expect(product(100, row(5, 3))).toEqual([[500, 300]]);
    const grid = [
      [1, 2],
      [3, 4],
    ];
    expect(product(100, grid)).toEqual([
      [100, 200],
      [300, 400],
    ]);
  });

  it("pairs equal shapes", () => {
    expect(product(column(100, 110), column(5, 3))).toEqual([[500], [330]]);
    expect(product(row(100, 110), row(5, 3))).toEqual([[500, 330]]);
  });

  it("makes a grid of a column against a row, whichever comes first", () => {
    expect(product(column(100, 110), row(5, 3))).toEqual([
      [500, 300],
      [550, 330],
    ]);
    expect(product(row(100, 110), column(5, 3))).toEqual([
      [500, 550],
      [300, 330],
    ]);
  });

  it.each([
    ["two columns", column(1, 2, 3), column(1, 2), "load has 3 rows and reps has 2 rows"],
    [
      "two rows",
      row(1, 2),
      row(1, 2, 3),
      "load has 1 row of 2 columns and reps has 1 row of 3 columns",
    ],
    [
      "two rows, the longer first,",
      row(1, 2, 3),
      row(1, 2),
      "load has 1 row of 3 columns and reps has 1 row of 2 columns",
    ],
    [
      "a grid and a column",
      [
        [1, 2],
        [3, 4],
      ],
      column(1, 2),
      "load has 2 rows of 2 columns and reps has 2 rows",
    ],
    [
      "a row and a grid",
      row(1, 2),
      [
        [1, 2],
        [3, 4],
      ],
      "reps has 2 rows of 2 columns and load has 1 row of 2 columns",
    ],
  ])("does not exist for %s of other sizes, which the error names", (_kind, a, b, sizes) => {
    expect(thrownBy(() => product(a, b))).toBe(
      `#VALUE! ${sizes}; expected ranges of the same size`,
    );
  });

  it("is the same for more than two arguments", () => {
    const named = (...ranges: unknown[]) =>
      ranges.map((range, index) => ({ name: `argument ${index + 1}`, range: toRange(range) }));
    expect(commonShape(named(1, column(1, 2), row(1, 2, 3), column(3, 4)))).toEqual({
      rows: 2,
      columns: 3,
    });
    expect(commonShape([])).toEqual({ rows: 1, columns: 1 });
    expect(thrownBy(() => commonShape(named(column(1, 2), row(1, 2), column(1))))).toBe(
      "nothing was thrown",
    );
    expect(thrownBy(() => commonShape(named(column(1, 2), row(1, 2), column(1, 2, 3))))).toContain(
      "argument 1 has 2 rows and argument 3 has 3 rows",
    );
  });
});

describe("a result that no host would take", () => {
  it("is refused before anything is computed: more than a column of a sheet has", () => {
    expect(() => expectRoomFor({ rows: 2 ** 20, columns: 1 })).not.toThrow();
    expect(() => expectRoomFor({ rows: 1024, columns: 1024 })).not.toThrow();
    expect(thrownBy(() => expectRoomFor({ rows: 1025, columns: 1024 }))).toBe(
      "#VALUE! the result would have 1025 rows of 1024 columns; expected at most 1048576 cells",
    );
    const long = Array.from({ length: 1025 }, () => 100);
    expect(thrownBy(() => product(column(...long), row(...long)))).toContain("1025 columns");
  });
});

describe("a row of a lifted result", () => {
  it.each(blanks)("is blank while a required cell is a blank of %s", (_host, blank) => {
    expect(product(column(100, blank, 120), column(5, 5, blank))).toEqual([[500], [""], [""]]);
  });

  it("is blank where its value is missing", () => {
    expect(product(column(100, "DNS"), column(5, 5))).toEqual([[500], [""]]);
  });

  it("has its own error, with its place, and the others are computed", () => {
    const [first, second, third] = product(column(100, "80kg", 120), 5).flat();
    expect([first, third]).toEqual([500, 600]);
    expect(errorText(second)).toBe(
      '#VALUE! the 2nd row of load is text, "80kg"; expected a load above 0',
    );
  });

  it("is an error, not blank, where one cell is bad and another blank", () => {
    const results = product(column("", "80kg"), column("80kg", ""));
    expect(results.flat().map((content) => content instanceof CellError)).toEqual([true, true]);
  });

  it("passes the error of its cell on, and names those that no function may return", () => {
    const errors = product(column("#N/A", "#DIV/0!", "#REF!", 100), 5).flat();
    expect(errors.slice(0, 3).map(errorText)).toEqual([
      "#N/A the 1st row of load holds #N/A",
      "#DIV/0! the 2nd row of load holds #DIV/0!",
      "#VALUE! the 3rd row of load holds #REF!",
    ]);
    expect(errors[3]).toBe(500);
  });

  it("has the error its computation throws, with its place", () => {
    const results = lift({ load: required(column(100, 300), load) }, ({ load }) => {
      if (load > 200) throw invalid("too heavy");
      return load;
    });
    expect(results[0]).toEqual([100]);
    expect(errorText(results[1]?.[0])).toBe("#VALUE! the 2nd row: too heavy");
  });

  it("is the first of several errors, in single cells too", () => {
    expect(errorText(product("80kg", "5x")[0]?.[0])).toMatch(/^#VALUE! load is text/);
    expect(errorText(product(column(100, "80kg"), "5x")[1]?.[0])).toContain("load is text");
  });

  it("has that error without a place in a call on single cells", () => {
    const heavy = () => {
      throw invalid("too heavy");
    };
    expect(errorText(lift({ load: required(300, load) }, heavy)[0]?.[0])).toBe("#VALUE! too heavy");
  });
});

describe("the place in a message", () => {
  it.each([
    [1, 1, ""],
    [3, 1, "the 3rd row"],
    [1, 3, "the 2nd column"],
    [3, 3, "the 3rd row, the 2nd column"],
  ])("is what is needed in a result of %i by %i", (rows, columns, place) => {
    expect(placeIn({ rows, columns }, 2, 1)).toBe(place);
  });

  it("is that of the sheet: the row of the range, the header's counted", () => {
    const [, , third] = product(column("load", 100, "80kg"), column("reps", 5, 5)).flat();
    expect(errorText(third)).toMatch(/^#VALUE! the 3rd row of load /);
    const [, second] = product(row(100, "80kg"), 5).flat();
    expect(errorText(second)).toMatch(/^#VALUE! the 2nd column of load /);
    expect(errorText(product("80kg", 5)[0]?.[0])).toMatch(/^#VALUE! load is text/);
  });
});

describe("a header row of a lifted call", () => {
  it("is blank", () => {
    expect(product(column("load", 100), column("10RM", 5))).toEqual([[""], [500]]);
    expect(product(column("load", 100), row(5, 3))).toEqual([
      ["", ""],
      [500, 300],
    ]);
  });

  it("is text in every data column; beside a number, text without digits is a missing value", () => {
    const [first, second] = product(column("10RM", 100), column(8, 5)).flat();
    expect(errorText(first)).toMatch(/^#VALUE! the 1st row of load is text, "10RM"/);
    expect(second).toBe(500);
    expect(product(column("load", 100), column(8, 5))).toEqual([[""], [500]]);
  });

  it("is no load with its unit", () => {
    const [first] = product(column("80kg", 100), column("x", 5)).flat();
    expect(errorText(first)).toMatch(/^#VALUE! the 1st row of load is text, "80kg"/);
  });

  it("is not spoilt by arguments that were left out or are single cells", () => {
    const inputs = {
      load: required(column("10RM", 100), load),
      reps: required(5, reps),
      reserve: recorded(undefined, reserve, 0),
    };
    expect(lift(inputs, ({ load, reps, reserve }) => load * (reps + reserve))).toEqual([
      [""],
      [500],
    ]);
  });
});

describe("lifting", () => {
  it("reads a single cell once, however long the column", () => {
    let reads = 0;
    const equation = {
      name: "equation",
      range: toRange("epley"),
      read: () => ++reads,
      header: "never",
    } as const;
    lift({ load: required(column(1, 2, 3, 4), load), equation }, () => 1);
    expect(reads).toBe(1);
  });

  it("leaves the layout of results that are more than one cell to the caller", () => {
    const results = liftOver({ load: required(column("load", 100, ""), load) }, ({ load }) => ({
      twice: 2 * load,
    }));
    expect(results).toEqual([[null], [{ twice: 200 }], [null]]);
  });

  it("lets through what is not an error of a cell, for that is a mistake of ours", () => {
    const mistake = () => {
      throw new RangeError("ours");
    };
    expect(() => lift({ load: required(100, load) }, mistake)).toThrow(RangeError);
    expect(() => lift({ load: required(column(100, 110), load) }, mistake)).toThrow(RangeError);
  });
});
