import { describe, expect, it } from "vitest";
import { apart } from "../../../src/pane/pictures/apart";
import { unitIn } from "../../../src/pane/pictures/columns";
import { cut, dayText, number, signed, textWidth, wrap } from "../../../src/pane/pictures/text";

describe("text in a picture", () => {
  it("breaks between words, and no line is wider than asked unless a word is", () => {
    const lines = wrap("where one more study would lie among the others", 90, 12);
    expect(lines.join(" ")).toBe("where one more study would lie among the others");
    expect(lines.length).toBeGreaterThan(2);
    for (const line of lines) expect(textWidth(line, 12)).toBeLessThanOrEqual(90);
  });

  it("cuts a long name, shows it, and keeps the year at its end", () => {
    const name = cut("Firstauthor, Secondauthor and others 2019", 100, 11);
    expect(name).toMatch(/^First.*…\s2019$/);
    expect(textWidth(name, 11)).toBeLessThanOrEqual(100);
    expect(cut("Study 1", 100, 11)).toBe("Study 1");
  });

  it("writes minus signs as print does, always the sign of a change, and no minus zero", () => {
    expect(number(-1.25, 2)).toBe("−1.25");
    expect(number(-0.001, 2)).toBe("0.00");
    expect(signed(3, 1)).toBe("+3.0");
    expect(signed(0.001, 2)).toBe("0.00");
  });

  it("names the day of a sheet's serial number", () => {
    expect(dayText(46027)).toBe("5 Jan 2026");
  });

  it("finds the unit at the end of a heading, and none where there is none", () => {
    expect(["load, kg", "load (lb)", "load kg", "load", "low"].map(unitIn)).toEqual([
      "kg",
      "lb",
      "kg",
      undefined,
      undefined,
    ]);
  });
});

describe("labels beside lines", () => {
  it("move apart until they can be read, in their order, and stay where there is room", () => {
    const labels = [
      { at: 10, text: "a" },
      { at: 12, text: "b" },
      { at: 90, text: "c" },
    ];
    const [a = NaN, b = NaN, c] = apart(labels, 15, (at) => at).map(({ at, shift }) => at + shift);
    expect(b - a).toBeGreaterThanOrEqual(15 - 1e-6);
    expect(c).toBe(90);
  });
});
