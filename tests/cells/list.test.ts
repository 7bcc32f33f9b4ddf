import { describe, expect, it } from "vitest";
import { listItem, readList, readOne, required, setting } from "../../src/cells";
import { blanks, column, load, reps, reserve, row, thrownBy } from "./fixtures";

describe("a list", () => {
  it("lies along a row or down a column, or is one value", () => {
    expect(readList(row(1, 3, 5), reps)).toEqual([1, 3, 5]);
    expect(readList(column(1, 3, 5), reps)).toEqual([1, 3, 5]);
    expect(readList(8, reps)).toEqual([8]);
  });

  it("passes over its heading, missing values and the blanks of every host", () => {
    expect(readList(column("10RM", 1, "–", 5), reps)).toEqual([1, 5]);
    const gaps = blanks.map(([, blank]) => blank);
    expect(readList(column(1, ...gaps, 5), reps)).toEqual([1, 5]);
    expect(readList(column(...gaps), reps)).toEqual([]);
  });

  it("keeps a zero that is a value", () => {
    expect(readList(row(0, 1, 2), reserve)).toEqual([0, 1, 2]);
  });

  it("names the place of a bad cell as it lies", () => {
    expect(thrownBy(() => readList(column("reps", 5, "5kg"), reps))).toMatch(
      /^#VALUE! the 3rd row of reps/,
    );
    expect(thrownBy(() => readList(row(5, "5kg"), reps))).toMatch(
      /^#VALUE! the 2nd column of reps/,
    );
    expect(thrownBy(() => readList("5kg", reps))).toMatch(/^#VALUE! reps is text, "5kg"/);
    expect(thrownBy(() => readList(column(1, "#DIV/0!"), reps))).toBe(
      "#DIV/0! the 2nd row of reps holds #DIV/0!",
    );
  });

  it("is no block", () => {
    expect(
      thrownBy(() =>
        readList(
          [
            [1, 2],
            [3, 4],
          ],
          reps,
        ),
      ),
    ).toBe("#VALUE! reps has 2 rows of 2 columns; expected one row or one column");
  });
});

describe("an argument of one value", () => {
  it("is read from one cell", () => {
    expect(readOne(required([["100"]], load))).toBe(100);
    expect(readOne(listItem(100, load))).toBe(100);
  });

  it.each(blanks)("is null, or the usual value, in a blank cell of %s", (_host, blank) => {
    expect(readOne(required([[blank]], load))).toBeNull();
    expect(readOne(setting([[blank]], load, 20))).toBe(20);
  });

  it("is no range", () => {
    expect(thrownBy(() => readOne(required(column(100, 120), load)))).toBe(
      "#VALUE! load has 2 rows; expected one value",
    );
  });

  it("throws what is wrong with it", () => {
    expect(thrownBy(() => readOne(required(-1, load)))).toBe(
      "#VALUE! load is -1; expected a load above 0",
    );
  });
});
