import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { version } from "../../../package.json";
import { readCatalogue } from "../../../src/tools/catalogue";
import { readMethod, references } from "../../../src/tools/methods/read";
import { agrees, workLines } from "../../../src/tools/methods/worked";
import { ROOT } from "../../../src/tools/paths";
import { lastOf, only } from "../../present";

/* What docs/functions.md and the help say of how a number is computed, held to what computes it. */

const { functions } = readCatalogue();
const methods = functions.map(({ id, family }) => [id, family, readMethod(family, id)] as const);

/** Whose results are likely to be published. */
const TREND = ["FITCURVE", "STRENGTHTREND", "SQUADTREND", "RISECOMPARE"];

describe.each(methods)("the method of %s", (id, family, method) => {
  it("has an equation, assumptions, when not to use it, a story and references", () => {
    const { equation, assumes, notFor, story, references } = method;
    expect(equation.length).toBeGreaterThan(10);
    for (const list of [assumes, notFor, references]) expect(list.length).toBeGreaterThan(0);
    for (const text of [...assumes, ...notFor, story]) expect(text).toMatch(/^[A-Za-z0-9].*[.:]$/);
  });

  it("works an example whose every step leads to what the function gives", () => {
    const checks = method.worked.flatMap(({ check }) => check ?? []);
    expect(checks.filter((check) => !agrees(check))).toEqual([]);
    expect(checks.filter(({ formula }) => formula.startsWith(`SPARE.${id}(`))).not.toEqual([]);
  });

  it("has a sentence for a methods section, with function and release, where results are published", () => {
    const isPublished = ["testing", "studies"].includes(family) || TREND.includes(id);
    if (isPublished) expect(method.sentence).toBeDefined();
    if (method.sentence === undefined) return;
    expect(method.sentence).toMatch(/^[A-Z].*\.$/);
    expect(method.sentence).toContain(id);
    expect(method.sentence).toContain(`Reps to Spare ${version}`);
  });
});

describe("the folder of methods", () => {
  it("holds a file a function and no other", () => {
    const files = readdirSync(join(ROOT, "shared", "methods"), {
      recursive: true,
      encoding: "utf8",
    })
      .filter((file) => file.endsWith(".md"))
      .map((file) => file.replaceAll("\\", "/"));
    expect(files.sort()).toEqual(
      functions.map(({ id, family }) => `${family}/${id.toLowerCase()}.md`).sort(),
    );
  });

  it("refers to everything that it lists, each once, with DOIs that are of the form of one", () => {
    const used = new Set(methods.flatMap(([, , method]) => method.references));
    expect(Object.values(references).filter((one) => !used.has(one))).toEqual([]);
    const texts = Object.values(references).map(({ text }) => text);
    expect(new Set(texts).size).toBe(texts.length);
    for (const { doi } of Object.values(references)) {
      if (doi !== undefined) expect(doi).toMatch(/^10\.\d{4,5}\/\S+$/);
    }
  });
});

describe("the notation of worked examples", () => {
  const last = (...lines: string[]) => lastOf(workLines(lines)).text;

  it("shows what a step comes to, and a number that is given as it is", () => {
    expect(last("load = 100")).toBe("load = 100");
    expect(last("t = 5 + 2")).toBe("t = 5 + 2 = 7");
    expect(last("t = 7", "f = 1 / (1 + t / 30)   Epley")).toBe(
      "f = 1 / (1 + t / 30) = 0.810811   (Epley)",
    );
  });

  it("takes × and ÷ before + and −, powers before both, from the left", () => {
    expect(last("x = 2 + 3 * 4 ^ 2 - 10 / 5 / 2")).toMatch(/= 49$/);
    expect(last("x = -(2 ^ 2)")).toMatch(/= −4$/);
  });

  it("does to each of a column what is done to it", () => {
    expect(last("y = {1; 2; 4}", "x = sum((y > 1) * y ^ 2)")).toMatch(/= 20$/);
    expect(last("y = {1; 2; 4}", "x = y[3]")).toMatch(/= 4$/);
    expect(last("y = {1, 2; 3, 4}", "x = column(y, 2)")).toMatch(/= \{2; 4\}$/);
  });

  it("finds a step that does not lead to what a function gives", () => {
    const check = (line: string) => workLines([line]).flatMap(({ check }) => check ?? []);
    expect(agrees(only(check("SPARE.E1RM(100, 5, 2) == 123.333333333333")))).toBe(true);
    expect(agrees(only(check("SPARE.E1RM(100, 5, 2) == 123.4")))).toBe(false);
  });

  it("refuses what it cannot read, naming the line", () => {
    expect(() => workLines(["x = 1 +"])).toThrow("x = 1 +");
    expect(() => workLines(["x = nobody * 2"])).toThrow("nothing is called nobody");
    expect(() => workLines(["x = SPARE.E1RM(100, 40)"])).toThrow("expected at most 30");
    expect(() => workLines(["in words alone"])).toThrow("neither a step nor a check");
  });
});
