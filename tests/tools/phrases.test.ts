import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { phrases } from "../../src/functions/phrases";
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

  it("stand once: no sentence about a parameter is written out beside two functions", () => {
    const written = sources.flatMap((source) =>
      caught(source, /^ \* @param \[?\w+\]? (.+)$/gm).flatMap(sentencesOf),
    );
    expect(written.length).toBeGreaterThan(100);
    expect(written.filter((sentence, at) => written.indexOf(sentence) !== at)).toEqual([]);
    const shared = new Set(
      Object.values(phrases).flatMap((phrase) =>
        typeof phrase === "string" ? sentencesOf(phrase) : [],
      ),
    );
    expect(written.filter((sentence) => shared.has(sentence))).toEqual([]);
  });
});

/** The sentences of a description that are its own. */
const sentencesOf = (description: string) =>
  description
    .replaceAll(/\{@phrase [^}]+\}/g, "")
    .split(/(?<=[.!?])\s+(?=\S)/)
    .map((sentence) => sentence.trim())
    .filter((sentence) => sentence !== "");
