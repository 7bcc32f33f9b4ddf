import { describe, expect, it } from "vitest";
import { readCatalogue } from "../../src/tools/catalogue";
import { allSaid, ruledOut } from "./vocabulary";

/* One thing, one name: what docs/vocabulary.md rules out, nobody reads. */

const said = allSaid();

const saidAnywhere = (pattern: RegExp) =>
  said
    .filter(({ text }) => pattern.test(text))
    .map(({ where, text }) => `${where}: ${pattern.exec(text)?.[0]} in "${text.slice(0, 120)}"`);

/** Labels, which are names: they may stand alone in a cell, and among the others in a message. */
const LABELS = ["dropped", "increment"];

const escaped = (word: string) => word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

describe("what a coach reads", () => {
  it("is there to be read", () => {
    expect(said.length).toBeGreaterThan(1000);
    expect(ruledOut.length).toBeGreaterThan(60);
  });

  it.each(ruledOut)("never says %s", (word) => {
    const found = saidAnywhere(new RegExp(`(?<![\\w-])${escaped(word)}(?![\\w-])`, "i"));
    expect(found.filter((one) => !LABELS.some((label) => one.endsWith(` in "${label}"`)))).toEqual(
      [],
    );
  });

  it("calls who lifts a lifter, and an athlete only who is tested or studied", () => {
    const lifting = readCatalogue().functions.filter(
      ({ family }) => !["testing", "studies"].includes(family),
    );
    const texts = lifting.flatMap(({ name, description, returns, errors, parameters }) =>
      [description, returns, errors, ...parameters.map((one) => one.description)].map(
        (text) => `${name}: ${text}`,
      ),
    );
    expect(texts.filter((text) => /athlete/i.test(text))).toEqual([]);
  });

  it("has × for times, − for minus, one ellipsis and a comma in thousands", () => {
    expect(saidAnywhere(/\d x \d/)).toEqual([]);
    expect(saidAnywhere(/(^|\s)-\d/)).toEqual([]);
    expect(saidAnywhere(/\w \.\.\.|\w\.\.\.(\s|$)/)).toEqual([]);
    expect(saidAnywhere(/(^|[\s(])\d{5,}(?=[\s,;.)]|$)/)).toEqual([]);
  });
});
