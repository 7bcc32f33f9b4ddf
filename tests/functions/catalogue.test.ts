import { describe, expect, it } from "vitest";
import { CellError } from "../../src/cells";
import { call, catalogue, functions, shown } from "./catalogue";
import { readFormula } from "./formula";

/** What Excel shows of a description at most. */
const LONGEST = 512;

describe("the catalogue", () => {
  it("names every function once, in letters and digits, for a Sheet's name allows no dot", () => {
    const ids = functions.map(({ id }) => id);
    expect(ids.filter((id) => !/^[A-Z][A-Z0-9]{2,}$/.test(id))).toEqual([]);
    expect(new Set(ids).size).toBe(ids.length);
    expect(functions.filter(({ id, name }) => id !== name)).toEqual([]);
  });

  it("takes no name that reads as a cell, such as MDC2", () => {
    expect(functions.filter(({ id }) => /^[A-Z]{1,3}[0-9]+$/.test(id))).toEqual([]);
  });

  it("has each choice a few words, each with what it means", () => {
    for (const { id, values } of catalogue.enums) {
      const words = values.map(({ stringValue }) => stringValue.toLowerCase());
      expect(new Set(words).size, id).toBe(words.length);
      expect(words.length, id).toBeGreaterThan(1);
      expect(
        values.filter(({ tooltip }) => !tooltip.trim()).map(({ name }) => name),
        id,
      ).toEqual([]);
    }
  });
});

describe.each(functions.map((entry) => [entry.id, entry] as const))("%s", (id, entry) => {
  it("says what it does, gives and refuses, shows an example and names its source", () => {
    for (const text of [entry.description, entry.returns, entry.errors, entry.source]) {
      expect(text.trim()).not.toBe("");
    }
    expect(entry.examples.length).toBeGreaterThan(0);
    expect(entry.examples.filter((example) => !example.includes(`SPARE.${id}(`))).toEqual([]);
  });

  it("describes itself and each argument within what Excel shows", () => {
    const descriptions = [entry, ...entry.parameters].map(({ description }) => description);
    expect(descriptions.filter((text) => !text || text.length > LONGEST)).toEqual([]);
  });

  it("takes a range in every argument, required ones first, a part that may be left out last", () => {
    const { parameters } = entry;
    expect(parameters.filter(({ dimensionality }) => dimensionality !== "matrix")).toEqual([]);
    const optional = parameters.map((parameter) => parameter.optional === true);
    expect(optional).toEqual([...optional].sort((a, b) => Number(a) - Number(b)));
    const part = parameters.findIndex(({ name, optional }) => name === "part" && optional);
    expect(part === -1 || part === parameters.length - 1).toBe(true);
    expect(new Set(parameters.map(({ name }) => name)).size).toBe(parameters.length);
  });

  it("works out its examples on literals without an error", () => {
    const formulas = entry.examples.map(readFormula).filter((formula) => formula !== undefined);
    for (const { id, args } of formulas) {
      const contents = call(id, ...args).flat();
      expect(contents.filter((content) => content instanceof CellError).map(shown)).toEqual([]);
      expect(contents.some((content) => content !== "")).toBe(true);
      expect(args.length).toBeLessThanOrEqual(entry.parameters.length);
    }
  });
});

describe("the reading of examples", () => {
  it("takes literals, gaps, arrays and fractions", () => {
    expect(readFormula('=SPARE.X({1,2;3,"a, b"}, , 2/4, "c", -1)')).toEqual({
      id: "X",
      args: [
        [
          [1, 2],
          [3, "a, b"],
        ],
        null,
        0.5,
        "c",
        -1,
      ],
    });
    expect(readFormula("=SPARE.PERCENTCHART()")).toEqual({ id: "PERCENTCHART", args: [] });
  });

  it("passes over references and nested functions", () => {
    expect(readFormula("=SPARE.E1RM(A1, 5)")).toBeUndefined();
    expect(readFormula("=SPARE.E1RM(SPARE.MDC(2), 5)")).toBeUndefined();
  });

  it("finds most functions an example that can be worked out", () => {
    const worked = functions.filter(({ examples }) =>
      examples.some((example) => readFormula(example)),
    );
    expect(worked.length).toBeGreaterThan(functions.length / 2);
  });
});
