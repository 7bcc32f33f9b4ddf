import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readMetadata } from "../../src/tools/catalogue";
import { readReadySheets } from "../../src/tools/paneData";
import { implementations } from "../../src/functions/implementations";
import { readyWorkbookData } from "../../src/engine/data/readySheets";
import { openWorkbook, type HeadlessWorkbook } from "../../src/engine/headless";
import { columnLetters } from "../../src/formula/address";
import { pictures } from "../../src/pane/pictures";
import { freeName } from "../../src/pane/sheetName";
import { elementAt } from "../present";
import { paneData } from "../ourSheets";

const { sheets: offers } = paneData();
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
    Array.from({ length: 34 }, (_c, column) => {
      const address = `${columnLetters(column)}${row + 1}`;
      return [address, book.read(name, address)] as [string, unknown];
    }),
  ).flat();
}

const cellsIn = (name: string, ...addresses: string[]) =>
  addresses.map((address) => book.read(name, address));

describe("the ready sheets", () => {
  test("are the ten that a coach's week is made of, each with what it is for", () => {
    expect(offers.map(({ id }) => id)).toEqual([
      "percentages",
      "block-plan",
      "squad-plan",
      "today",
      "training-log",
      "who-got-stronger",
      "reserve-calls",
      "test-day",
      "studies",
      "cards",
    ]);
    for (const { purpose, title } of offers) {
      expect(title.length).toBeGreaterThanOrEqual("Today".length);
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
    await book.write(name, "C6", 150);
    expect(book.read(name, "C12")).toBe(150);
    await book.write(name, "C6", 140);
    expect(book.read(name, "C12")).toBe(140);
  });

  test("grow with the squad: a lifter more is a lifter more in the plan and on the floor", async () => {
    expect(cellsIn("Squad plan", "B36", "E36")).toEqual(["", ""]);
    await book.write("Squad plan", "R28", "Sofie Aamot");
    await book.write("Squad plan", "S28", 110);
    expect(cellsIn("Squad plan", "B36", "C36", "D36", "E36")).toEqual([
      "Sofie Aamot",
      "Back squat",
      110,
      77.5,
    ]);
    // No maximum of the other lift, no load for it.
    expect(cellsIn("Squad plan", "B37", "C37", "E37")).toEqual(["Sofie Aamot", "Bench pull", ""]);
    expect(cellsIn("Today", "B23", "D23", "E23", "J23")).toEqual(["", "", "", ""]);
    await book.write("Today", "U23", "Sofie Aamot");
    await book.write("Today", "V23", 110);
    await book.write("Today", "I23", 4);
    expect(cellsIn("Today", "B23", "E23", "J23")).toEqual(["Sofie Aamot", 90, 95]);
    expect(cellsIn("Today", "N19", "P19", "R19")).toEqual(["Sofie Aamot", 90, 4]);
  });

  test("say so when the lift asked for is not in the list, and give no load", async () => {
    await book.write("Today", "C7", "Deadlift");
    expect(book.read("Today", "B3")).toMatch(/^No lift of the list is called Deadlift/);
    expect(cellsIn("Today", "D15", "E15")).toEqual(["", ""]);
    await book.write("Today", "C7", "Bench pull");
    expect(cellsIn("Today", "D15", "E15")).toEqual([67.5, 55]);
    await book.write("Today", "C7", "Back squat");
  });

  test("read a date of the log that is text, and say when they cannot", async () => {
    await book.write("Log", "A6", "2026-01-07");
    expect(book.read("Log", "H6")).toBe("2026-W02");
    await book.write("Log", "A6", "last Monday");
    expect(book.read("Log", "H6")).toBe("no date");
    expect(book.read("Log", "A2")).toMatch(/^1 rows? ha(s|ve) a date that cannot be read/);
    await book.write("Log", "A6", 46_027);
    expect(book.read("Log", "H6")).toBe("2026-W02");
  });

  test("draw the pictures that a test day is for", () => {
    const rows = Array.from({ length: 41 }, (_row, at) =>
      [..."ABCDEFG"].map((column) => book.read("Test day", `${column}${at + 5}`)),
    );
    for (const id of ["athlete-changes", "group-changes"]) {
      const picture = pictures.find((each) => each.id === id)!;
      expect(picture.read(rows)).not.toHaveProperty("problem");
    }
  });

  test("keep a blank reserve blank in every formula of the log", () => {
    const log = offers.find(({ id }) => id === "training-log")!.sheet;
    const formulas = Object.values(log.cells)
      .flatMap((row) => Object.values(row))
      .flatMap(({ formula }) => formula ?? [])
      .filter((formula) => formula.includes("SPARE."));
    expect(formulas).toHaveLength(3);
    for (const formula of formulas) expect(formula).toMatch(/F\d+:F500&""/);
  });
});

describe("a sheet's name", () => {
  test("gets the first number that makes it one nobody has", () => {
    expect(freeName("Log", ["Start"])).toBe("Log");
    expect(freeName("Log", ["log", "Log 2"])).toBe("Log 3");
  });
});
