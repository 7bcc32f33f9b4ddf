import { describe, expect, it } from "vitest";
import { HostError, listed, matchWord, readCell, readChoice } from "../../src/cells";
import { blanks, errorText } from "./fixtures";

enum Direction {
  nearest = "nearest",
  down = "down",
  up = "up",
}
const read = (raw: unknown) => readChoice(readCell(raw), "direction", Direction);

describe("a choice", () => {
  it("is the word, case and outer blanks aside", () => {
    expect(read("down")).toBe(Direction.down);
    expect(read(" DOWN ")).toBe(Direction.down);
  });

  it.each(blanks)("is not made in a blank cell of %s", (_host, blank) => {
    expect(read(blank)).toBeNull();
  });

  it("lists the words where it is none of them", () => {
    expect(errorText(read("sideways"))).toBe(
      '#VALUE! direction is "sideways"; expected "nearest", "down" or "up"',
    );
    expect(errorText(read(2.5))).toContain("direction is 2.5;");
    expect(errorText(read(true))).toContain("#VALUE! direction is");
  });

  it("passes on an error that its cell holds", () => {
    expect(errorText(readChoice(new HostError("#N/A"), "direction", Direction))).toBe(
      "#N/A direction holds #N/A",
    );
  });

  it("is no part of a word", () => {
    expect(matchWord("do", ["down"])).toBeUndefined();
    expect(matchWord("downward", ["down"])).toBeUndefined();
  });
});

describe("a list of words in a message", () => {
  it("reads as a sentence at any length", () => {
    expect(listed(["a"])).toBe('"a"');
    expect(listed(["a", "b"])).toBe('"a" or "b"');
    expect(listed(["a", "b", "c"])).toBe('"a", "b" or "c"');
  });
});
