import type { Area } from "../../../src/formula/address";
import type { Parameter } from "../../../src/functions/catalogue";
import type { CellValue } from "../../../src/xlsx/model";
import { elementAt, only } from "../../present";
import { oneOf, randomBelow, type Random } from "../../hostile/random";
import type { SheetDraft } from "./sheetDraft";

/** An argument as a formula has it, and as our functions are given it. */
export interface Written {
  readonly text: string;
  readonly given: unknown;
  /** The cell that it reads, if it is one, with what that holds. */
  readonly cell?: { readonly text: string; readonly value: CellValue };
}

/** Where the cells go that a call reads, and the sheet that the call is on. */
export interface Desk {
  readonly random: Random;
  readonly data: SheetDraft;
  readonly home: SheetDraft;
  readonly keep: (sheet: SheetDraft, row: number, column: number, value: CellValue) => void;
}

/** A reserve is blank where none was recorded, which one spelling keeps on every host. */
const isReserve = (name: string) => /^(reserve|calledReserve|plannedReserve)$/.test(name);

/** What a coach's cell can hold instead: nothing, a word for a set that was not done, a slip of the hand. */
const SLIPS: readonly CellValue[] = [null, null, null, "DNS", "–", 0, "80kg", "3"];

/** Writes an argument as a literal, a cell, an array or a range, on cells of its own. */
export function writeArgument(value: unknown, { name }: Parameter, desk: Desk): Written {
  if (value === null) return { text: "", given: undefined };
  const { random, home, data } = desk;
  const rows = rowsOf(value);
  const isOne = isSingle(rows);
  if (random() < (isOne ? 0.5 : 0.15)) return writeOut(rows);
  const held = withSlip(rows, isOne ? 0.1 : 0.3, random);
  const area = putRows(held, desk);
  const text = data.reference(area, home, random() < 0.3);
  if (isReserve(name) && random() < 0.6) return { text: `${text}&""`, given: asText(held) };
  const cell = isOne ? { text, value: only(only(held)) } : undefined;
  return { text, given: held, ...(cell && { cell }) };
}

/** Writes an argument that is the same for every row of a column of formulas: cells of its own, or a literal. */
export function writeFixed(value: unknown, desk?: Desk): Written {
  if (value === null) return { text: "", given: undefined };
  const rows = rowsOf(value);
  if (!desk || desk.random() < 0.5) return writeOut(rows);
  return { text: desk.data.reference(putRows(rows, desk), desk.home, true), given: rows };
}

/** Of each of a column's cells, what a formula beside it reads. */
export function writeEach(value: unknown, { name }: Parameter, desk: Desk): readonly Written[] {
  const { random, data, home } = desk;
  const held = withSlip(rowsOf(value), 0.4, random);
  const area = putRows(held, desk, name);
  const makesText = isReserve(name) && random() < 0.6;
  return held.map((row, down) => {
    const at = area.startRow + down;
    const text = data.reference({ ...area, startRow: at, endRow: at }, home);
    return cellArgument(text, only(row), makesText);
  });
}

/** One cell as an argument, perhaps made text. */
export const cellArgument = (text: string, value: CellValue, makesText: boolean): Written => ({
  text: makesText ? `${text}&""` : text,
  given: makesText ? asText([[value]]) : [[value]],
  cell: { text, value },
});

/** A cell is always given as rows, even one alone; a blank cell is nothing. */
export const rowsOf = (value: unknown): CellValue[][] =>
  Array.isArray(value)
    ? (value as CellValue[][]).map((row) => row.map((cell) => (cell === "" ? null : cell)))
    : [[value as CellValue]];

/** Whether an argument is a column of as many rows. */
export function isColumn(value: unknown, rows: number): boolean {
  if (!Array.isArray(value) || value.length !== rows) return false;
  return (value as unknown[][]).every((row) => row.length === 1);
}

/** The same with one cell as it may be in a log; the first may be a heading. */
export function withSlip(rows: CellValue[][], chance: number, random: Random): CellValue[][] {
  if (random() >= chance) return rows;
  const at = rows.length === 1 ? 0 : 1 + randomBelow(random, rows.length - 1);
  const slip = oneOf(random, SLIPS);
  return rows.map((row, index) => (index === at ? [slip, ...row.slice(1)] : row));
}

/** Puts rows into the free columns on the right, from the second row on, and a heading above. */
function putRows(rows: CellValue[][], { data, keep }: Desk, heading?: string): Area {
  const [startRow, startColumn] = [1, data.free];
  if (heading !== undefined) keep(data, 0, startColumn, heading);
  for (const [down, row] of rows.entries()) {
    for (const [right, value] of row.entries())
      keep(data, startRow + down, startColumn + right, value);
  }
  const width = elementAt(rows, 0).length;
  const endColumn = startColumn + width - 1;
  data.free = Math.max(data.free, endColumn + 1);
  return { startRow, startColumn, endRow: startRow + rows.length - 1, endColumn };
}

/** What `&""` makes of cells: one cell is a value then, no longer a reference. */
function asText(rows: readonly (readonly CellValue[])[]): unknown {
  const texts = rows.map((row) => row.map((cell) => (cell === null ? "" : String(cell))));
  return isSingle(texts) ? only(only(texts)) : texts;
}

const isSingle = (rows: readonly (readonly unknown[])[]) =>
  rows.length === 1 && rows[0]?.length === 1;

/** A literal, or an array of them, in which nothing can be blank. */
function writeOut(rows: readonly (readonly CellValue[])[]): Written {
  const inside = rows.map((row) => row.map(literal).join(",")).join(";");
  if (isSingle(rows)) return { text: inside, given: only(only(rows)) };
  return { text: `{${inside}}`, given: rows.map((row) => row.map((cell) => cell ?? "")) };
}

const literal = (value: CellValue): string =>
  typeof value === "number" ? String(value) : `"${String(value ?? "").replaceAll('"', '""')}"`;
