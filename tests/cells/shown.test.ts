import { describe, expect, it } from "vitest";
import {
  DATE_FORMAT,
  dayText,
  digitsFor,
  fixed,
  grouped,
  ordinary,
  shownIn,
} from "../../src/cells/shown";

describe("a number with so many decimals", () => {
  it("has a half rounded away from zero, by the 15 digits that a cell has", () => {
    expect(fixed(2.5, 0)).toBe("3");
    expect(fixed(-2.5, 0)).toBe("-3");
    expect(fixed(1.005, 2)).toBe("1.01");
    expect(fixed(4.015, 2)).toBe("4.02");
    expect(fixed(82.25, 1)).toBe("82.3");
  });

  it("has no sign where nothing is left of it", () => {
    expect(fixed(-0.004, 2)).toBe("0.00");
    expect(fixed(-0.5, 1)).toBe("-0.5");
    expect(fixed(0, 1)).toBe("0.0");
  });
});

describe("estimates", () => {
  it.each([
    [[1000, 3], 0],
    [[999.9], 1],
    [[-1000], 0],
    [[5], 1],
    [[4.9, -4.9], 2],
    [[], 2],
  ])("of the size of %j have decimals that tell them apart: %d", (values, digits) => {
    expect(digitsFor(values)).toBe(digits);
  });
});

it("thousands are grouped from the end", () => {
  expect(["999", "1000", "12500", "1234567"].map(grouped)).toEqual([
    "999",
    "1,000",
    "12,500",
    "1,234,567",
  ]);
});

it("a number without a format has six digits and no dust", () => {
  expect(ordinary(149 + 1 / 3)).toBe("149.333");
  expect(ordinary(0.1 + 0.2)).toBe("0.3");
});

it("a day is named so that nobody takes its month for its day", () => {
  expect(dayText(46_027)).toBe("5 Jan 2026");
  expect(shownIn(46_027, DATE_FORMAT)).toBe("5 Jan 2026");
});

describe("a number in a format", () => {
  it.each([
    [0.125, "0.0%", "12.5%"],
    [12_500.4, "#,##0", "12,500"],
    [12_500.4, "0", "12500"],
    [-1_234.56, "#,##0.0", "-1,234.6"],
    [1.25, "+0.00;-0.00;0.00", "+1.25"],
    [-1.25, "+0.00;-0.00;0.00", "-1.25"],
    [-1.25, "+0.00", "-+1.25"],
    [0, "+0.00;-0.00;0.00", "0.00"],
    [0, "+0.00;-0.00", "+0.00"],
    [0, '0.0;-0.0;"none"', "none"],
    [0.004, '[<0.01]"<"0.00;[>0.99]">"0.00;0.00', "<0.00"],
    [0.01, '[<0.01]"under";[<=0.5]0.00;0.0', "0.01"],
    [0.5, '[<0.01]"under";[<=0.5]0.00;0.0', "0.50"],
    [0.51, '[<0.01]"under";[<=0.5]0.00;0.0', "0.5"],
    [0.99, '[>0.99]"sure";0.00', "0.99"],
    [0.991, '[>0.99]"sure";0.00', "sure"],
    [0.99, '[>=0.99]"sure";0.00', "sure"],
    [1, '[=1]"sure";0.00', "sure"],
    [1.5, '[=1]"sure";0.00', "1.50"],
    [2, "[<1]0.00;[<2]0.0", "2"],
    [149 + 1 / 3, "General", "149.333"],
    [149 + 1 / 3, "", "149.333"],
    [149 + 1 / 3, "# ?/?", "149.333"],
  ])("%d in %j is shown as %j", (value, format, text) => {
    expect(shownIn(value, format)).toBe(text);
  });
});
