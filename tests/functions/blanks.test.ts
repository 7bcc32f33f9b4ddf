import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CatalogueFunction } from "../../src/functions/catalogue";
import { CellError, type Grid } from "../../src/cells";
import { hasPart, call, functions, shownGrid, value, wordsOf } from "./catalogue";
import { elementAt, only } from "../present";
import { plausibleArguments, ROWS, type Layout } from "./plausible";

/** How each host passes a blank cell of a range; 0, desktop Excel's, where a zero cannot be a value. */
const BLANKS = [null, "", { type: "Empty" }, undefined];

const argumentsOf = (entry: CatalogueFunction, layout: Layout, count = 8) =>
  fc.sample(plausibleArguments(entry, layout), count);

/** Only what must be given; a report lifts over rows where one part is named. */
const bare = (entry: CatalogueFunction, args: readonly unknown[]) =>
  entry.parameters.map((parameter, index) => {
    if (parameter.optional !== true) return args[index];
    return parameter.name === "part" && hasPart(entry) ? wordsOf(parameter)[0] : null;
  });

const isColumn = (argument: unknown, rows: number): argument is unknown[][] =>
  Array.isArray(argument) && argument.length === rows && (argument[0] as unknown[]).length === 1;

/** The arguments with one row of their columns written over. */
const withRow = (args: readonly unknown[], row: number, rows: number, cell: unknown) =>
  args.map((argument) =>
    isColumn(argument, rows)
      ? argument.map((cells, at) => (at === row ? [cell] : cells))
      : argument,
  );

/** The first rows of the columns alone. */
const cutTo = (rows: number, args: readonly unknown[]) =>
  args.map((argument) => (isColumn(argument, ROWS) ? argument.slice(0, rows) : argument));

/** The functions that work out each row of inputs for itself: fewer rows are the same results, but fewer. */
const lifted = functions.filter((entry) =>
  argumentsOf(entry, "column").every((sample) => {
    const args = bare(entry, sample);
    const result = call(entry.id, ...args);
    const fewer = call(entry.id, ...cutTo(3, args));
    const columns = args.filter((argument) => isColumn(argument, ROWS));
    return (
      columns.length > 0 &&
      result.length === ROWS &&
      JSON.stringify(fewer) === JSON.stringify(result.slice(0, 3))
    );
  }),
);
const isLifted = (id: string) => lifted.some((entry) => entry.id === id);

const isBlankResult = (result: Grid) => result.flat().every((content) => content === "");
const isHeadings = (result: Grid) => result.length === 1 && only(result).length > 1;
const isReport = (result: Grid) => result.length > 1 && result.every((row) => row.length === 2);
const isPlainError = (result: Grid) =>
  result.flat().some((content) => content instanceof CellError && content.message !== "");

it("most scalar functions are found to give a result for each row", () => {
  expect(lifted.map(({ id }) => id)).toEqual(
    expect.arrayContaining(["E1RM", "LOADFOR", "NEXTLOAD", "CHANGESCORE", "MDC", "ROUNDLOAD"]),
  );
});

describe.each(functions.map((entry) => [entry.id, entry] as const))("%s", (id, entry) => {
  const required = entry.parameters.filter(({ optional }) => optional !== true);

  it.each(BLANKS)("is blank, or says what it needs, where every required cell is %j", (blank) => {
    if (required.length === 0) return;
    const result = call(id, ...required.map(() => [[blank]]));
    if (isLifted(id)) expect(isBlankResult(result), JSON.stringify(result)).toBe(true);
    // A table of a log without rows is its headings, and a report without data is its labels and n.
    else {
      expect(
        [isBlankResult, isHeadings, isReport, isPlainError].some((fits) => fits(result)),
        JSON.stringify(result),
      ).toBe(true);
    }
  });

  it("has the same result for the blanks of every host", () => {
    for (const args of argumentsOf(entry, "column")) {
      const [first, ...others] = BLANKS.map((blank) =>
        shownGrid(call(id, ...withRow(args, 3, ROWS, blank))),
      );
      for (const other of others) expect(other).toEqual(first);
    }
  });

  it("has the same result where an argument is null, undefined or cut off at the end", () => {
    for (const args of argumentsOf(entry, "column")) {
      const trimmed = [...args];
      while (trimmed.length > 0 && trimmed.at(-1) === null) trimmed.pop();
      const undefinedArgs = args.map((argument) => argument ?? undefined);
      const withNulls = shownGrid(call(id, ...args));
      expect(shownGrid(call(id, ...trimmed))).toEqual(withNulls);
      expect(shownGrid(call(id, ...undefinedArgs))).toEqual(withNulls);
    }
  });

  it("has the same result whether numbers come as numbers, text or data types", () => {
    for (const args of argumentsOf(entry, "column")) {
      const as = (spell: (number: number) => unknown) =>
        shownGrid(call(id, ...args.map((argument) => respelt(argument, spell))));
      const plain = shownGrid(call(id, ...args));
      // Labels are given back untouched, so that text may stay text there; numbers do not.
      if (!entry.parameters.some(({ name }) => /^(by|blocks|first)$/.test(name))) {
        expect(as(String)).toEqual(plain);
        expect(as((number) => String(number).replace(".", ","))).toEqual(
          as((number) => (needsPoint(number) ? number : String(number))),
        );
      }
      expect(as((basicValue) => ({ type: "FormattedNumber", basicValue }))).toEqual(plain);
    }
  });
});

/** Numbers whose decimal comma could group thousands, which is another number. */
const needsPoint = (number: number) => /^-?[1-9]\d{0,2}\.\d{3}$/.test(String(number));

function respelt(argument: unknown, spell: (number: number) => unknown): unknown {
  if (typeof argument === "number") return spell(argument);
  if (!Array.isArray(argument)) return argument;
  return argument.map((row: unknown[]) =>
    row.map((cell) => (typeof cell === "number" && cell !== 0 ? spell(cell) : cell)),
  );
}

describe.each(lifted.map((entry) => [entry.id, entry] as const))("%s, lifted", (id, entry) => {
  const columns = () => bare(entry, only(argumentsOf(entry, "column", 1)));

  it("is blank across a row that is not filled in, and computes the others", () => {
    const args = columns();
    const plain = call(id, ...args);
    const result = call(id, ...withRow(args, 2, ROWS, ""));
    expect(elementAt(result, 2).every((content) => content === "")).toBe(true);
    expect(result.filter((_row, at) => at !== 2)).toEqual(plain.filter((_row, at) => at !== 2));
  });

  it("is blank across its header row, and the same below it", () => {
    const args = columns();
    const headed = args.map((argument, at) =>
      isColumn(argument, ROWS) ? [[entry.parameters[at]?.name], ...argument] : argument,
    );
    const [header, ...rest] = call(id, ...headed);
    const plain = call(id, ...args);
    expect(header?.every((content) => content === "")).toBe(true);
    expect(rest.map((row) => row.map((content) => typeof content))).toEqual(
      plain.map((row) => row.map((content) => typeof content)),
    );
    rest.flat().forEach((content, at) => {
      if (!(content instanceof CellError)) expect(content).toBe(plain.flat()[at]);
    });
  });

  it("has an error with its row across a bad row only", () => {
    const args = columns();
    const plain = call(id, ...args);
    const result = call(id, ...withRow(args, 4, ROWS, "80kg"));
    for (const content of elementAt(result, 4)) {
      expect(content).toBeInstanceOf(CellError);
      expect((content as CellError).message).toMatch(/^the 5th row of .*80kg/);
    }
    expect(result.filter((_row, at) => at !== 4)).toEqual(plain.filter((_row, at) => at !== 4));
  });

  it("passes on the error of a cell, in its row only", () => {
    const result = call(
      id,
      ...withRow(columns(), 1, ROWS, { type: "Error", basicValue: "#DIV/0!" }),
    );
    for (const content of elementAt(result, 1)) expect(content).toMatchObject({ code: "#DIV/0!" });
    expect(
      result
        .filter((_row, at) => at !== 1)
        .flat()
        .every((content) => !(content instanceof CellError) || content.code !== "#DIV/0!"),
    ).toBe(true);
  });
});

describe("a reserve", () => {
  it("that is left out is 0; given but blank it is not recorded; 0 is a value", () => {
    const atZero = value("E1RM", 100, 5, 0);
    expect(atZero).toBeGreaterThan(100);
    expect(value("E1RM", 100, 5)).toBe(atZero);
    expect(value("E1RM", 100, 5, null)).toBe(atZero);
    expect(value("E1RM", 100, 5, "0")).toBe(atZero);
    for (const blank of ["", [[""]], [[null]], { type: "Empty" }, "–"]) {
      expect(value("E1RM", 100, 5, blank)).toBe("");
    }
  });

  it('is told from a blank on every host by the spelling with &""', () => {
    const loads = [[100], [100]];
    const asText = [["0"], [""]];
    expect(call("E1RM", loads, 5, asText)).toEqual([[value("E1RM", 100, 5, 0)], [""]]);
  });

  it("that is a blank target gives no load yet", () => {
    expect(value("NEXTLOAD", 100, 8, 2, 5, "")).toBe("");
    expect(value("NEXTLOAD", 100, 8, "", 5, 1)).toBe("");
    expect(value("LOADFOR", 140, 5, "")).toBe("");
  });
});
