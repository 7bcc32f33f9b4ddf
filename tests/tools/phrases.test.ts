import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { spelledOut } from "../../src/tools/catalogue";
import { ROOT } from "../../src/tools/paths";
import { caught } from "../present";

const FUNCTIONS = join(ROOT, "src", "functions");
const sources = readdirSync(FUNCTIONS, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".ts") && file.includes("/"))
  .map((file) => readFileSync(join(FUNCTIONS, file), "utf8"));

describe("the sentences that functions share", () => {
  it("are put where a comment names them, with the function's own example in them", () => {
    expect(spelledOut("@param [confidence] {@phrase confidence} Always.")).toBe(
      "@param [confidence] A fraction between 0 and 1; 0.95 if omitted. Always.",
    );
    expect(spelledOut("{@phrase onePart effect size}")).toBe(
      'One label, such as "effect size"; with it the inputs may be ranges.',
    );
  });

  it.each(["{@phrase confidense}", "{@phrase parts}", "{@phrase confidence today}"])(
    "are named as they are: %s is refused",
    (tag) => expect(() => spelledOut(tag)).toThrow(tag),
  );

  it("stand once: none is written out beside more than two functions", () => {
    const written = sources.flatMap((source) => caught(source, /^ \* @param \[?\w+\]? (.+)$/gm));
    expect(written.length).toBeGreaterThan(100);
    const often = [...new Set(written)].filter(
      (sentence) =>
        !sentence.startsWith("{@phrase ") && written.filter((one) => one === sentence).length > 2,
    );
    expect(often).toEqual([]);
  });
});
