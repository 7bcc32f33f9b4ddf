import type { Area } from "../formula/address";
import { shiftFormula } from "../formula/shift";
import { serialOfTime } from "../cells";
import { parseRange } from "./address";
import type { Look, SheetFile, Style, Written } from "./format";
import { withItsList } from "./ownList";
import type { ReadyCell, ReadySheet } from "./ready";
import { colorOf, styleOf } from "./styles";

/** Room for a coach's own rows and columns below and beside what the sheet fills. */
const ROOM = { rows: 40, columns: 10 };
const SMALLEST = { rows: 60, columns: 16 };

/** Lays out one sheet in its look, and once more for a list of the coach's own; `readCsv` gives a CSV file's rows. */
export function layOutSheet(sheet: SheetFile, look: Look, readCsv: ReadCsv): ReadySheet {
  const { reads, invented, ...own } = sheet;
  const ready = layOut(withItsList(sheet), look, readCsv);
  if (reads === undefined || invented === undefined) return ready;
  const { list, columns } = reads;
  return {
    ...ready,
    own: { list, columns: Object.keys(columns), sheet: layOut(own, look, readCsv) },
  };
}

type ReadCsv = (file: string) => readonly (readonly string[])[];

function layOut(sheet: SheetFile, workbook: Look, readCsv: ReadCsv): ReadySheet {
  const cells = new Map<string, Cell>();
  const cellAt = (row: number, column: number) => {
    const key = `${row},${column}`;
    const cell = cells.get(key) ?? { row, column, content: {}, styles: [] };
    cells.set(key, cell);
    return cell;
  };
  const writeFrom = (address: string, rows: readonly (readonly Written[])[]) => {
    const { startRow, startColumn } = parseRange(address);
    rows.forEach((row, down) =>
      row.forEach((content, right) => {
        if (content === null) return;
        cellAt(startRow + down, startColumn + right).content = readContent(content);
      }),
    );
  };

  for (const [address, content] of entries(sheet.cells)) writeFrom(address, rowsOf(content));
  for (const [address, file] of entries(sheet.csv)) {
    writeFrom(
      address,
      readCsv(file).map((row) => row.map(readCsvField)),
    );
  }
  for (const [address, formula] of entries(sheet.fill)) {
    const range = parseRange(address);
    forEachCell(range, (row, column) => {
      const moved = shiftFormula(formula, row - range.startRow, column - range.startColumn);
      cellAt(row, column).content = { formula: moved };
    });
  }

  const used = {
    rows: 1 + Math.max(0, ...[...cells.values()].map(({ row }) => row)),
    columns: 1 + Math.max(0, ...[...cells.values()].map(({ column }) => column)),
  };
  for (const [address, names] of entries(sheet.style)) {
    forEachCell(closeOver(parseRange(address), used), (row, column) => {
      cellAt(row, column).styles.push(...names.split(" "));
    });
  }

  return {
    name: sheet.name,
    ...(sheet.tab !== undefined && { tab: colorOf(sheet.tab, workbook.colors) }),
    gridlines: sheet.gridlines !== false,
    rowCount: Math.max(used.rows + ROOM.rows, SMALLEST.rows),
    columnCount: Math.max(used.columns + ROOM.columns, SMALLEST.columns),
    widths: sizes(sheet.widths, "Column"),
    heights: sizes(sheet.heights, "Row"),
    merged: (sheet.merge ?? []).map(parseRange),
    ...(sheet.freeze !== undefined && { frozen: frozenAt(sheet.freeze) }),
    ...dressed([...cells.values()], workbook),
  };
}

interface Cell {
  readonly row: number;
  readonly column: number;
  content: Content;
  readonly styles: string[];
}

type Content = Omit<ReadyCell, "style">;

function readContent(content: Written): Content {
  if (content === null) return {};
  if (typeof content !== "string") return { value: content };
  if (content.startsWith("=")) return { formula: content };
  if (/^\d{4}-\d{2}-\d{2}$/.test(content)) return { value: serialOfTime(Date.parse(content)) };
  return { value: content.replace(/^'/, "") };
}

/** A CSV file has no types: what reads as a number is one, and nothing between commas is a blank. */
function readCsvField(text: string): Written {
  if (text === "") return null;
  return /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text;
}

function rowsOf(
  content: Written | readonly Written[] | readonly (readonly Written[])[],
): readonly (readonly Written[])[] {
  if (!Array.isArray(content)) return [[content as Written]];
  return Array.isArray(content[0])
    ? (content as readonly (readonly Written[])[])
    : [content as readonly Written[]];
}

/** Lets a range of whole columns or rows end where the sheet's contents do. */
function closeOver(range: Area, used: { rows: number; columns: number }): Area {
  const openRows = Number.isNaN(range.startRow);
  const openColumns = Number.isNaN(range.startColumn);
  return {
    startRow: openRows ? 0 : range.startRow,
    endRow: openRows ? used.rows - 1 : range.endRow,
    startColumn: openColumns ? 0 : range.startColumn,
    endColumn: openColumns ? used.columns - 1 : range.endColumn,
  };
}

function forEachCell(range: Area, visit: (row: number, column: number) => void): void {
  for (let row = range.startRow; row <= range.endRow; row++) {
    for (let column = range.startColumn; column <= range.endColumn; column++) visit(row, column);
  }
}

/** Every cell with its look, and the looks by their names. */
function dressed(cells: readonly Cell[], workbook: Look): Pick<ReadySheet, "cells" | "styles"> {
  const byRow: Record<number, Record<number, ReadyCell>> = {};
  const looks: Record<string, Style> = {};
  for (const { row, column, content, styles } of cells) {
    const names = ["base", ...styles];
    const style = names.join(" ");
    looks[style] ??= styleOf(names, workbook);
    (byRow[row] ??= {})[column] = { ...content, style };
  }
  return { cells: byRow, styles: looks };
}

/** Widths or heights by address, spread over every single column or row they cover. */
function sizes(
  byAddress: Readonly<Record<string, number>> | undefined,
  side: "Row" | "Column",
): Record<number, number> {
  return Object.fromEntries(
    entries(byAddress).flatMap(([address, pixels]) => {
      const range = parseRange(address);
      const first = range[`start${side}`];
      const last = range[`end${side}`];
      return Array.from({ length: last - first + 1 }, (_, index) => [first + index, pixels]);
    }),
  );
}

function frozenAt(address: string): ReadySheet["frozen"] {
  const { startRow, startColumn } = parseRange(address);
  return { rows: startRow, columns: startColumn };
}

function entries<T>(record: Readonly<Record<string, T>> | undefined): [string, T][] {
  return Object.entries(record ?? {});
}
