import { isDeepStrictEqual } from "node:util";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readMetadata } from "../../../src/tools/catalogue";
import { CellError, type Grid } from "../../../src/cells";
import { implementations } from "../../../src/functions/implementations";
import { readDemo } from "../../../src/tools/demo";
import { openWorkbook, type HeadlessWorkbook } from "../../../src/engine/headless";
import { call as callFunction, catalogue } from "../../functions/catalogue";
import { asText } from "../../functions/faults";
import { caught } from "../../present";
import { referenceRows } from "../../reference/rows";
import { excelHost, type Shown } from "./excel";
import { sheetsHost, shownInSheets } from "./host";
import { load } from "./load";

/** One call of a function, as the embedded workbook made it, with what it gave there. */
interface Call {
  readonly id: string;
  readonly args: readonly unknown[];
  readonly result: Grid;
}

const sheets = sheetsHost(load());
const hosts = [
  { host: "Google Sheets", shownBy: bySheets, wanted: shownInSheets },
  { host: "Excel on the web", shownBy: byExcel(null), wanted: shownInExcel },
  { host: "desktop Excel", shownBy: byExcel(0), wanted: shownInExcel },
] as const;

function bySheets({ id, args }: Call): unknown[][] {
  return shownInSheets(sheets.call(id, args));
}

function byExcel(blank: 0 | null): (call: Call) => unknown[][] {
  const excel = excelHost(blank);
  return ({ id, args }) => excel.call(id, args);
}

/** Excel lets only two of its errors carry a message. */
function shownInExcel(grid: Grid): Shown[][] {
  const withMessage = ["#VALUE!", "#N/A"];
  return grid.map((row) =>
    row.map((content) =>
      content instanceof CellError
        ? `${content.code} ${withMessage.includes(content.code) ? content.message : ""}`
        : content,
    ),
  );
}

/**
 * The calls that count: a formula that reads a spill is computed once before the spill is there, on blanks, and
 * once more after it.
 */
const settled = (calls: readonly Call[]) =>
  calls.filter(
    (call, at) =>
      !calls
        .slice(at + 1)
        .some((later) => later.id === call.id && isSameOrFilled(call.args, later.args)),
  );

/** Whether two arguments are the same but for blanks of the first that are filled in the second. */
function isSameOrFilled(before: unknown, after: unknown): boolean {
  if (before === null) return true;
  if (!Array.isArray(before) || !Array.isArray(after)) return isDeepStrictEqual(before, after);
  return (
    before.length === after.length && before.every((item, at) => isSameOrFilled(item, after[at]))
  );
}

const named = ({ id, args }: Call) => `${id} ${asText(args)}`.slice(0, 300);

describe("every formula of the demo has, cell by cell, the value it has in the embedded workbook", () => {
  const demo = readDemo();
  const calls: Call[] = [];
  let book: HeadlessWorkbook;

  beforeAll(async () => {
    const recording = Object.fromEntries(
      Object.entries(implementations).map(([id, compute]) => [
        id,
        (...args: unknown[]) => {
          const result = compute(...args);
          calls.push({ id, args, result });
          return result;
        },
      ]),
    );
    book = await openWorkbook(demo, readMetadata(), recording);
  });
  afterAll(() => book.close());

  test("and every function that one of them names was called", () => {
    const formulas = Object.values(demo.sheets)
      .flatMap((sheet) => Object.values(sheet.cellData ?? {}))
      .flatMap((row: object) => Object.values(row) as { f?: unknown }[])
      .flatMap(({ f }) => (typeof f === "string" ? [f] : []));
    const ours = formulas.flatMap((formula) => caught(formula, /SPARE\.([A-Z0-9]+)\(/g));
    expect(ours.length).toBeGreaterThan(0);
    expect([...new Set(calls.map(({ id }) => id))].sort()).toEqual([...new Set(ours)].sort());
    // Formulas that are filled down with the same arguments are the same call.
    expect(settled(calls).length).toBeGreaterThan(ours.length / 2);
  });

  test.each(hosts)("in $host", ({ shownBy, wanted }) => {
    for (const call of settled(calls)) {
      expect(shownBy(call), named(call)).toEqual(wanted(call.result));
    }
  });
});

describe("every published value comes out of every host as it does of the functions themselves", () => {
  const calls = referenceRows().map((row): Call => {
    const { parameters } = catalogue.functions.find(({ id }) => id === row.function)!;
    const args = parameters.map((_parameter, position) => row.arguments[position]);
    return { id: row.function, args, result: callFunction(row.function, ...args) };
  });

  test("for every function there is one", () => {
    const ids = new Set(calls.map(({ id }) => id));
    expect(catalogue.functions.filter(({ id }) => !ids.has(id)).map(({ id }) => id)).toEqual([]);
  });

  test.each(hosts.filter(({ host }) => host !== "desktop Excel"))("in $host", (one) => {
    for (const call of calls)
      expect(one.shownBy(call), named(call)).toEqual(one.wanted(call.result));
  });
});
