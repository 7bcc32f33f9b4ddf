import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readMetadata } from "../../src/tools/catalogue";
import { readPaneData, readReadySheets } from "../../src/tools/paneData";
import { implementations } from "../../src/functions/implementations";
import { readyWorkbookData } from "../../src/engine/data/readySheets";
import { openWorkbook, type HeadlessWorkbook } from "../../src/engine/headless";
import { columnLetters } from "../../src/formula/address";
import { freeName } from "../../src/pane/sheetName";
import { elementAt } from "../present";

const { sheets: offers } = readPaneData();
let book: HeadlessWorkbook;

beforeAll(async () => {
  book = await openWorkbook(
    readyWorkbookData("ready", readReadySheets()),
    readMetadata(),
    implementations,
  );
});
afterAll(() => book.close());

/** Every cell of a sheet's first rows with its address. */
function cellsOf(name: string): [address: string, content: unknown][] {
  return Array.from({ length: 60 }, (_r, row) =>
    Array.from({ length: 20 }, (_c, column) => {
      const address = `${columnLetters(column)}${row + 1}`;
      return [address, book.read(name, address)] as [string, unknown];
    }),
  ).flat();
}

describe("the ready sheets", () => {
  test("are the seven that a coach starts from, each with what it is for", () => {
    expect(offers.map(({ id }) => id)).toEqual([
      "percentages",
      "block-plan",
      "training-log",
      "reserve-calls",
      "test-day",
      "studies",
      "cards",
    ]);
    for (const { purpose, title } of offers) {
      expect(title.length).toBeGreaterThan(5);
      expect(purpose).toMatch(/\.$/);
    }
  });

  test.each(offers.map(({ sheet }) => sheet.name))("%s computes without an error", (name) => {
    const cells = cellsOf(name);
    const errors = cells.filter(([, content]) => String(content).startsWith("#"));
    expect(errors.map(([address]) => `${address}: ${book.message(name, address)}`)).toEqual([]);
    expect(cells.filter(([, content]) => typeof content === "number").length).toBeGreaterThan(30);
  });

  test.each(offers.map(({ sheet }) => sheet))("$name stands alone", (sheet) => {
    // The workbook it is added to has ids of its own.
    expect(sheet).not.toHaveProperty("id");
    const { styles } = sheet;
    const cells = Object.values(sheet.cells).flatMap((row) => Object.values(row));
    const formulas = cells.flatMap(({ formula }) => formula ?? []);
    expect(formulas.some((formula) => formula.includes("SPARE."))).toBe(true);
    // Under a new name, or in another workbook, a reference to a sheet would break.
    for (const formula of formulas) expect(formula.replace(/"[^"]*"/g, "")).not.toContain("!");
    for (const { style } of cells) expect(styles).toHaveProperty([style]);
  });

  test("answer a change of their shaded cells", async () => {
    const { name } = elementAt(offers, 0).sheet;
    await book.write(name, "C5", 150);
    expect(book.read(name, "C11")).toBe(150);
    await book.write(name, "C5", 140);
    expect(book.read(name, "C11")).toBe(140);
  });

  test("keep a blank reserve blank in every formula of the log", () => {
    const log = offers.find(({ id }) => id === "training-log")!.sheet;
    const formulas = Object.values(log.cells)
      .flatMap((row) => Object.values(row))
      .flatMap(({ formula }) => formula ?? [])
      .filter((formula) => formula.includes("SPARE."));
    expect(formulas).toHaveLength(3);
    for (const formula of formulas) expect(formula).toMatch(/G\d+:G300&""/);
  });
});

describe("a sheet's name", () => {
  test("gets the first number that makes it one nobody has", () => {
    expect(freeName("Log", ["Start"])).toBe("Log");
    expect(freeName("Log", ["log", "Log 2"])).toBe("Log 3");
  });
});
