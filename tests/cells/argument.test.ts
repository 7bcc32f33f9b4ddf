import { describe, expect, it } from "vitest";
import {
  choice,
  chosen,
  lift,
  listItem,
  optional,
  recorded,
  required,
  setting,
} from "../../src/cells";
import { only } from "../present";
import { blanks, blanksButZero, column, errorText, load, reps, reserve } from "./fixtures";

enum Direction {
  nearest = "nearest",
  down = "down",
}

describe("a required number", () => {
  it.each(blanks)("waits in a blank cell of %s", (_host, blank) => {
    expect(lift({ load: required([[blank]], load) }, () => "computed")).toEqual([[""]]);
  });

  it.each([null, undefined])("waits where it was left out (%s)", (nothing) => {
    expect(lift({ load: required(nothing, load) }, () => "computed")).toEqual([[""]]);
  });

  it("waits where its value is missing", () => {
    expect(lift({ load: required("BW", load) }, () => "computed")).toEqual([[""]]);
  });
});

describe("a number that is recorded or not", () => {
  const read = (given: unknown) =>
    lift({ reserve: recorded(given, reserve, 0) }, ({ reserve }) => reserve)[0]?.[0];

  it.each([null, undefined])("has its value where it was left out (%s)", (nothing) => {
    expect(read(nothing)).toBe(0);
  });

  it.each(blanksButZero)("waits in a blank cell of %s", (_host, blank) => {
    expect(read([[blank]])).toBe("");
  });

  it("is what the cell holds where it holds something", () => {
    expect(read([[0]])).toBe(0);
    expect(read([["0"]])).toBe(0);
    expect(read([["2,5"]])).toBe(2.5);
    expect(read([["fail"]])).toBe("");
  });
});

describe("a number that may be missing", () => {
  it.each(blanksButZero)("does not hold its row up in a blank cell of %s", (_host, blank) => {
    const inputs = { load: required(100, load), reserve: optional([[2], [blank]], reserve) };
    expect(lift(inputs, ({ reserve }) => reserve ?? "none")).toEqual([[2], ["none"]]);
  });
});

describe("a setting", () => {
  it.each(blanks)("has its usual value in a blank cell of %s", (_host, blank) => {
    const result = lift({ bar: setting([[blank]], load, 20) }, ({ bar }) => bar);
    expect(result).toEqual([[20]]);
  });

  it("may have no usual value", () => {
    const result = lift({ df: setting(null, load, undefined) }, ({ df }) => df ?? "none");
    expect(result).toEqual([["none"]]);
  });

  it("is never missing: text that is no number is a mistake", () => {
    const [result] = only(lift({ bar: setting("none", load, 20) }, ({ bar }) => bar));
    expect(errorText(result)).toBe('#VALUE! load is text, "none"; expected a load above 0');
  });

  it("can be a column beside the data, headed like it", () => {
    const inputs = {
      load: required(column("load", 100, 110), load),
      bar: setting(column("bar", "", 15), load, 20),
    };
    expect(lift(inputs, ({ load, bar }) => load - bar)).toEqual([[""], [80], [95]]);
  });
});

describe("a choice", () => {
  it.each(blanks)("is the usual one in a blank cell of %s", (_host, blank) => {
    const inputs = { direction: choice([[blank]], "direction", Direction, Direction.nearest) };
    expect(lift(inputs, ({ direction }) => direction)).toEqual([["nearest"]]);
  });

  it("may differ from row to row", () => {
    const inputs = {
      load: required(column(1, 2, 3), load),
      direction: choice(column("down", "", "up"), "direction", Direction, Direction.nearest),
    };
    const [first, second, third] = lift(inputs, ({ direction }) => direction).flat();
    expect([first, second]).toEqual(["down", "nearest"]);
    expect(errorText(third)).toBe(
      '#VALUE! the 3rd row of direction is "up"; expected "nearest" or "down"',
    );
  });

  it("never makes or hides a header row, being text itself", () => {
    const read = (given: unknown) => chosen(given, "equation", (value) => String(value));
    const first = (data: unknown) =>
      lift(
        { load: required(data, load), equation: read(column("epley", "wathan")) },
        ({ equation }) => equation,
      );
    expect(first(column(100, 110))).toEqual([["epley"], ["wathan"]]);
    expect(first(column("load", 110))).toEqual([[""], ["wathan"]]);
  });
});

describe("a list beside the data", () => {
  it("is judged alone: its heading is its own, and it hides none", () => {
    const weeks = (load: unknown, week: unknown) =>
      lift(
        { load: required(load, { ...reps, name: "load" }), week: listItem(week, reps) },
        ({ load, week }) => load + week,
      );
    expect(weeks(100, column("week", 1, 2))).toEqual([[""], [101], [102]]);
    expect(weeks(column("10RM", 100), column(1, 2))).toEqual([[""], [102]]);
    expect(weeks(column(100, 110), column("week 1", 2))).toEqual([[""], [112]]);
  });
});
