import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { CellError } from "../../src/cells";
import { call, catalogue, functions, shown } from "./catalogue";
import { readFormula } from "./formula";

const SRC = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "src");

interface Import {
  readonly file: string;
  /** The room for a file of ours, the package's name for one of others. */
  readonly from: string;
}

/** Every import of a room's files, as the room or package it comes from. */
function importsOf(room: string): Import[] {
  const files = readdirSync(join(SRC, room), { recursive: true, encoding: "utf8" });
  return files
    .filter((file) => /\.tsx?$/.test(file))
    .flatMap((file) => {
      const path = join(SRC, room, file);
      const text = readFileSync(path, "utf8");
      const named = [...text.matchAll(/(?:\bfrom |\bimport |\bimport\(|\brequire\()"([^"\s]+)"/g)];
      return named.map(([, name]) => ({ file: join(room, file), from: roomOf(path, name) }));
    });
}

function roomOf(path: string, name: string): string {
  if (!name.startsWith(".")) return name;
  return relative(SRC, normalize(join(dirname(path), name))).split("/")[0];
}

const strangers = (room: string, allowed: RegExp) =>
  importsOf(room)
    .filter(({ from }) => !allowed.test(from))
    .map(({ file, from }) => `${file} imports ${from}`);

describe("the rooms", () => {
  it("are seen through: their imports are found", () => {
    expect(importsOf("core").some(({ from }) => from.startsWith("@stdlib/"))).toBe(true);
    expect(importsOf("cells").length).toBeGreaterThan(5);
    expect(new Set(importsOf("functions").map(({ from }) => from))).toEqual(
      new Set(["cells", "core", "functions"]),
    );
  });

  it("keep the science apart: it imports itself and the distribution library", () => {
    expect(strangers("core", /^(core$|@stdlib\/)/)).toEqual([]);
  });

  it("keep the reading of cells apart: it imports nothing", () => {
    expect(strangers("cells", /^cells$/)).toEqual([]);
  });

  it("keep the functions from the hosts: they import the science and the cells", () => {
    expect(strangers("functions", /^(core|cells|functions)$/)).toEqual([]);
  });

  it("run anywhere: functions, cells and science touch no page, network, file or console", () => {
    const worldly = /\b(document|window|fetch|XMLHttpRequest|process|console|localStorage)\s*[.(]/;
    const found = ["core", "cells", "functions"].flatMap((room) =>
      readdirSync(join(SRC, room), { recursive: true, encoding: "utf8" })
        .filter((file) => file.endsWith(".ts"))
        .filter((file) =>
          worldly.test(withoutComments(readFileSync(join(SRC, room, file), "utf8"))),
        ),
    );
    expect(found).toEqual([]);
  });
});

const withoutComments = (text: string) => text.replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, "");

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

  it("takes a range in every argument, required ones first, part last", () => {
    const { parameters } = entry;
    expect(parameters.filter(({ dimensionality }) => dimensionality !== "matrix")).toEqual([]);
    const optional = parameters.map((parameter) => parameter.optional === true);
    expect(optional).toEqual([...optional].sort((a, b) => Number(a) - Number(b)));
    const part = parameters.findIndex(({ name }) => name === "part");
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
