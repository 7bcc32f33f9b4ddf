import fc from "fast-check";
import { widthOf } from "../../../src/cells";
import { seededRandom, shuffled } from "../../../src/core/statistics/seededRandom";
import { cellAddress } from "../../../src/formula/address";
import type { CatalogueFunction } from "../../../src/functions/catalogue";
import type { CellValue } from "../../../src/xlsx/model";
import { buildBook, worksheet } from "../../cli/support";
import { functions } from "../../functions/catalogue";
import { layouts, plausibleArguments, ROWS, type Layout } from "../../functions/plausible";
import { oneOf, randomBelow } from "../../hostile/random";
import { elementAt } from "../../present";
import {
  cellArgument,
  isColumn,
  rowsOf,
  withSlip,
  writeArgument,
  writeEach,
  writeFixed,
  type Desk,
  type Written,
} from "./arguments";
import { callText, valuesOf } from "./calls";
import { SheetDraft, tableXml, type Kind } from "./sheetDraft";
import { bare, wrappers, type Wrapper } from "./wrappers";

/** What a cell is to hold in every result: what our function gives, or what was there before. */
export interface Check {
  readonly sheet: string;
  readonly address: string;
  /** The formula that fills the cell, or nothing for one of the coach's own. */
  readonly formula: string | undefined;
  readonly expected: CellValue;
}

export interface RandomBook {
  readonly bytes: Uint8Array;
  readonly checks: readonly Check[];
  /** The functions that it calls. */
  readonly called: readonly string[];
}

/** Formulas of ours in a book, beside the one in its Table. */
const CALLS = 6;
/** Sheets' names, some of which formulas have to quote. */
const NAMES = ["Log", "Week 2", "Tom's tests"];
/** What a formula of ours came to before, by the file; not by us. */
const OLD = 7;

/**
 * Book `number` of a seed: one to three sheets with columns of a coach's inputs, a Table, and formulas of random
 * functions on literals, cells and ranges of them, some filled down, some inside IF, IFERROR or ROUND, some spilling,
 * among ordinary formulas. What they are to come to is asked of the functions themselves.
 */
export function randomBook(seed: number, number: number): RandomBook {
  const random = seededRandom(seed * 7919 + number);
  const checks = new Map<string, Check>();
  const sheets = NAMES.slice(0, 1 + randomBelow(random, NAMES.length)).map(
    (name) => new SheetDraft(name),
  );
  const check = (
    sheet: SheetDraft,
    row: number,
    column: number,
    more: Omit<Check, "sheet" | "address">,
  ) => {
    const address = cellAddress(row, column);
    checks.set(`${sheet.name}!${address}`, { sheet: sheet.name, address, ...more });
  };
  const keep: Desk["keep"] = (sheet, row, column, value) => {
    check(sheet, row, column, { formula: undefined, expected: value });
    // Some inputs are ordinary formulas, which keep what they were saved with.
    const isWorkedOut = typeof value === "number" && random() < 0.05;
    if (isWorkedOut) sheet.putFormula(row, column, `N(${value})`, value, { is: "one cell" });
    else sheet.put(row, column, value);
  };
  const saved = random() < 0.5 ? OLD : null;
  const picked = Array.from({ length: CALLS + 1 }, (_, at) =>
    inTurn(seed, number * (CALLS + 1) + at),
  );

  const table = addTable(elementAt(picked, 0));
  picked.slice(1).forEach((entry, at) => {
    const desk = { random, keep, data: oneOf(random, sheets), home: oneOf(random, sheets) };
    if (at % 3 === 0) fillDown(entry, desk, at);
    else putOne(entry, desk);
  });
  for (const sheet of sheets) addOrdinary(sheet);

  const type = "application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml";
  const bytes = buildBook({
    sheets: Object.fromEntries(
      sheets.map((sheet, at) => {
        const after = at === 0 ? `<tableParts count="1"><tablePart r:id="rId1"/></tableParts>` : "";
        return [sheet.name, worksheet(sheet.xml(), after)];
      }),
    ),
    parts: { "xl/tables/table1.xml": [table, type] },
    references: { "xl/worksheets/sheet1.xml": [["table", "../tables/table1.xml"]] },
  });
  return { bytes, checks: [...checks.values()], called: picked.map(({ id }) => id) };

  /** Arguments that make sense, the same for a book whoever asks. */
  function argumentsOf(entry: CatalogueFunction, layout: Layout): readonly unknown[] {
    const start = { seed: randomBelow(random, 2 ** 31), numRuns: 1 };
    return elementAt(fc.sample(plausibleArguments(entry, layout), start), 0);
  }

  /** One formula, which spills where it has several results. */
  function putOne(entry: CatalogueFunction, desk: Desk): void {
    const given = argumentsOf(entry, oneOf(random, layouts));
    const written = entry.parameters.map((parameter, at) =>
      writeArgument(given[at], parameter, desk),
    );
    const rows = valuesOf(entry.id, written);
    const { home } = desk;
    const [row, column, width] = [1, home.free, widthOf(rows)];
    const [shown, formula] = wrapped(entry.id, [written], [rows]);
    const area = { startRow: row, startColumn: column, endRow: row, endColumn: column };
    // What filled more cells before leaves them.
    const longer = random() < 0.3 ? 2 : 0;
    const over = longer > 0 ? { ...area, endRow: row + rows.length - 1 + longer } : area;
    home.putFormula(row, column, elementAt(formula, 0), saved, { is: "spilling", over });
    for (let at = row + 1; at <= over.endRow; at++) {
      home.put(at, column, OLD);
      check(home, at, column, { formula: elementAt(formula, 0), expected: null });
    }
    for (const [down, values] of elementAt(shown, 0).entries()) {
      for (const [right, expected] of values.entries()) {
        check(home, row + down, column + right, { formula: elementAt(formula, 0), expected });
      }
    }
    home.free = column + width;
    addReader(home, row, column, elementAt(elementAt(elementAt(shown, 0), 0), 0));
  }

  /** A formula beside each row of its columns, as one group or each by itself. */
  function fillDown(entry: CatalogueFunction, desk: Desk, group: number): void {
    const given = argumentsOf(entry, "column");
    const columns = entry.parameters.map((parameter, at) =>
      isColumn(given[at], ROWS)
        ? writeEach(given[at], parameter, desk)
        : repeated(writeFixed(given[at], desk)),
    );
    const isGroup = random() < 0.5;
    const { home } = desk;
    const column = home.free;
    const over = { startRow: 1, startColumn: column, endRow: ROWS, endColumn: column };
    putEach(entry, columns, home, column, (at) =>
      isGroup
        ? { is: "filled down", group, over: at === 0 ? over : undefined }
        : { is: "one cell" },
    );
    addReader(home, 1, column, checks.get(`${home.name}!${cellAddress(1, column)}`)!.expected);
  }

  /** Formulas in the last column of a Table, which read their row by its columns' names. */
  function addTable(entry: CatalogueFunction): string {
    const sheet = elementAt(sheets, 0);
    const given = argumentsOf(entry, "column");
    const headings: string[] = [];
    const columns = entry.parameters.map(({ name }, at) => {
      if (!isColumn(given[at], ROWS)) return repeated(writeFixed(given[at]));
      const right = headings.push(name) - 1;
      keep(sheet, 0, right, name);
      return withSlip(rowsOf(given[at]), 0.4, random).map(([value = null], down) => {
        keep(sheet, 1 + down, right, value);
        return cellArgument(`Sets[[#This Row],[${name}]]`, value, false);
      });
    });
    const right = headings.push("result") - 1;
    keep(sheet, 0, right, "result");
    putEach(entry, columns, sheet, right, () => ({ is: "one cell" }));
    sheet.free = right + 1;
    return tableXml(headings, ROWS);
  }

  function putEach(
    entry: CatalogueFunction,
    columns: readonly (readonly Written[])[],
    sheet: SheetDraft,
    column: number,
    kindOf: (at: number) => Kind,
  ): void {
    const calls = Array.from({ length: ROWS }, (_, at) =>
      columns.map((cells) => elementAt(cells, at)),
    );
    // A cell that is no spilling one shows the first of several results.
    const values = calls.map((written) => [
      [elementAt(elementAt(valuesOf(entry.id, written), 0), 0)],
    ]);
    const [shown, formulas] = wrapped(entry.id, calls, values);
    for (const [at, formula] of formulas.entries()) {
      sheet.putFormula(1 + at, column, formula, saved, kindOf(at));
      check(sheet, 1 + at, column, {
        formula,
        expected: elementAt(elementAt(elementAt(shown, at), 0), 0),
      });
    }
  }

  /** The formulas of some calls, all inside one wrapper where that means the same to every program, and what they show. */
  function wrapped(
    id: string,
    calls: readonly (readonly Written[])[],
    values: readonly CellValue[][][],
  ) {
    const cells = calls.map((written) => written.find(({ cell }) => cell)?.cell);
    const isSingle = values.every((rows) => rows.length === 1 && widthOf(rows) === 1);
    const wanted: Wrapper = isSingle && random() < 0.6 ? oneOf(random, wrappers) : bare;
    const means = (wrapper: Wrapper) =>
      values.map((rows, at) =>
        rows.map((row) => row.map((value) => wrapper.mean(value, cells[at]?.value ?? null))),
      );
    const fits =
      (!wanted.needsCell || cells.every(Boolean)) && !means(wanted).flat(2).includes(undefined);
    const wrapper = fits ? wanted : bare;
    const formulas = calls.map((written, at) =>
      wrapper.write(callText(id, written), cells[at]?.text ?? ""),
    );
    return [means(wrapper) as CellValue[][][], formulas] as const;
  }

  /** An ordinary formula that reads one of ours, saved with what it came to then. */
  function addReader(sheet: SheetDraft, row: number, column: number, value: CellValue): void {
    if (random() >= 0.3) return;
    const cell = cellAddress(row, column);
    const formula = `IF(ISNUMBER(${cell}),${cell}*2,"none")`;
    const expected = typeof value === "number" ? value * 2 : "none";
    const before = saved === null ? null : saved * 2;
    const at = sheet.free;
    sheet.putFormula(row, at, formula, before, { is: "one cell" });
    check(sheet, row, at, { formula, expected });
  }

  /** An ordinary formula that has nothing to do with ours keeps its value, even one that nobody would come to. */
  function addOrdinary(sheet: SheetDraft): void {
    const column = sheet.free;
    sheet.putFormula(0, column, "SUM(1,2)", 4711, { is: "one cell" });
    check(sheet, 0, column, { formula: undefined, expected: 4711 });
  }
}

/** Every function has its turn, in another order in each round, so that each comes to stand everywhere. */
function inTurn(seed: number, turn: number): CatalogueFunction {
  const round = Math.floor(turn / functions.length);
  const order = shuffled(functions, seededRandom(seed + round));
  return elementAt(order, turn % functions.length);
}

const repeated = (written: Written): readonly Written[] => Array<Written>(ROWS).fill(written);
