import { describe, expect, it } from "vitest";
import {
  isAmbiguousNumber,
  isHeadingText,
  isMissingText,
  numberInText,
  quoted,
} from "../../src/cells";

describe("text that is wholly a number", () => {
  it.each([
    ["3", 3],
    ["0", 0],
    ["2.5", 2.5],
    ["2,5", 2.5],
    [" 2.5 ", 2.5],
    ["\u00a03\u00a0", 3],
    ["-2", -2],
    ["\u22122", -2],
    ["+4", 4],
    [".5", 0.5],
    [",5", 0.5],
    ["3.", 3],
    ["1e3", 1000],
    ["1,5E-2", 0.015],
    ["0,125", 0.125],
    ["1.250", 1.25],
    ["1250,5", 1250.5],
  ])("counts as that number: %j", (text, number) => {
    expect(numberInText(text)).toBe(number);
  });

  it.each([
    "",
    "DNS",
    "80kg",
    "3x5",
    "1,250",
    "1,2,3",
    "1.2.3",
    "1 250",
    "e3",
    "--3",
    "1e999",
    "0x10",
    "Infinity",
  ])("is not seen where the text is no number, or more than one: %j", (text) => {
    expect(numberInText(text)).toBeUndefined();
  });
});

describe("a comma that may group thousands", () => {
  it.each(["1,250", "12,500", "-1,250", "\u22121,250", " 140,000 "])("is ambiguous: %j", (text) => {
    expect(isAmbiguousNumber(text)).toBe(true);
  });

  it.each(["0,125", "2,5", "1,25", "1250,125", "1,2500", "1.250"])(
    "is not ambiguous where nobody groups so: %j",
    (text) => {
      expect(isAmbiguousNumber(text)).toBe(false);
    },
  );
});

describe("a missing value", () => {
  it.each(["DNS", "inj", "–", "-", "BW", "n/a", "?", "(sick)"])(
    "is text without digits: %j",
    (text) => {
      expect(isMissingText(text)).toBe(true);
    },
  );

  it.each(["80kg", "3x5", "10RM", "8-9", "٣", "８０", "½"])(
    "is not text with a digit in any script: %j",
    (text) => {
      expect(isMissingText(text)).toBe(false);
    },
  );
});

describe("a heading", () => {
  it.each([
    "load",
    "Load (kg)",
    "10RM",
    "1RM",
    "3 RM test",
    "T1",
    "#1",
    "week 2",
    "2nd trial",
    "RIR",
    "–",
  ])("can be any text: %j", (text) => {
    expect(isHeadingText(text)).toBe(true);
  });

  it.each([
    "3",
    "2,5",
    "1,250",
    "\u22121,250",
    "1,250.5",
    "1 250",
    "1'250",
    "80kg",
    "80 kg",
    "80 KG.",
    "\u221280kg",
    "1,250 kg",
    "1 250 kg",
    "175 lb",
    "45lbs",
    "100#",
    "7 reps",
    "85%",
    "30 cm",
    "250W",
    "2 RIR",
    "12 weeks",
  ])("is never a number, nor a number followed only by a unit: %j", (text) => {
    expect(isHeadingText(text)).toBe(false);
  });

  it("is told from a number in a time that grows with its length only", () => {
    const began = performance.now();
    for (const part of ["1", "1 ", " ", ",", "1,"]) {
      expect(isHeadingText(`${part.repeat(20_000)}!`)).toBe(true);
    }
    expect(performance.now() - began).toBeLessThan(1000);
  });
});

describe("text in a message", () => {
  it("is quoted as it is", () => {
    expect(quoted("80kg")).toBe('"80kg"');
  });

  it("is cut to forty characters", () => {
    expect(quoted("x".repeat(40))).toBe(`"${"x".repeat(40)}"`);
    expect(quoted("x".repeat(41))).toBe(`"${"x".repeat(39)}…"`);
  });
});
