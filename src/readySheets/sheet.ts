import type { ICellData, IFreeze, IRange, IWorksheetData } from "@univerjs/core";
import { BooleanNumber, CellValueType } from "@univerjs/core";
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { parseRange } from "./address";
import type { DemoContent, DemoSheet } from "./format";

/** What a sheet needs from the workbook around it. */
export interface DemoSurroundings {
  /** The rows of a CSV file. */
  readonly readCsv: (file: string) => string[][];
  /** The id under which the workbook keeps a combination of named styles. */
  readonly styleId: (names: readonly string[]) => string;
  readonly colorOf: (color: string) => string;
}

/** Room for a coach's own rows and columns below and beside what the demo fills. */
const room = { rows: 40, columns: 6 };
const smallest = { rows: 60, columns: 16 };

/** Lays out one sheet of the demo as the spreadsheet wants it. */
export function layOutSheet(
  id: string,
  sheet: DemoSheet,
  { readCsv, styleId, colorOf }: DemoSurroundings,
): Partial<IWorksheetData> {
  const cells = new Map<string, Cell>();
  const cellAt = (row: number, column: number) => {
    const key = `${row},${column}`;
    const cell = cells.get(key) ?? { row, column, content: {}, styles: [] };
    cells.set(key, cell);
    return cell;
  };
  const writeFrom = (address: string, rows: readonly (readonly DemoContent[])[]) => {
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
      const moved = moveFormula(formula, row - range.startRow, column - range.startColumn);
      cellAt(row, column).content = { f: moved };
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
    id,
    name: sheet.name,
    tabColor: sheet.tab === undefined ? "" : colorOf(sheet.tab),
    rowCount: Math.max(used.rows + room.rows, smallest.rows),
    columnCount: Math.max(used.columns + room.columns, smallest.columns),
    cellData: toCellData([...cells.values()], styleId),
    columnData: sizes(sheet.widths, "Column", (w) => ({ w })),
    rowData: sizes(sheet.heights, "Row", (h) => ({ h, ia: BooleanNumber.FALSE })),
    mergeData: (sheet.merge ?? []).map(parseRange),
    showGridlines: sheet.gridlines === false ? BooleanNumber.FALSE : BooleanNumber.TRUE,
    ...(sheet.freeze && { freeze: freezeAt(sheet.freeze) }),
  };
}

interface Cell {
  readonly row: number;
  readonly column: number;
  content: ICellData;
  readonly styles: string[];
}

/** The spreadsheet counts days from here, as Excel does from March 1900 on. */
const dayZero = Date.UTC(1899, 11, 30);
const day = 24 * 60 * 60 * 1000;

function readContent(content: DemoContent): ICellData {
  if (typeof content === "number") return { v: content, t: CellValueType.NUMBER };
  if (typeof content === "boolean") return { v: content ? 1 : 0, t: CellValueType.BOOLEAN };
  if (content === null) return {};
  if (content.startsWith("=")) return { f: content };
  if (/^\d{4}-\d{2}-\d{2}$/.test(content)) {
    return { v: (Date.parse(content) - dayZero) / day, t: CellValueType.NUMBER };
  }
  return { v: content.replace(/^'/, ""), t: CellValueType.STRING };
}

/** A CSV file has no types: what reads as a number is one, and nothing between commas is a blank. */
function readCsvField(text: string): DemoContent {
  if (text === "") return null;
  return /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text;
}

function rowsOf(
  content: DemoContent | readonly DemoContent[] | readonly (readonly DemoContent[])[],
): readonly (readonly DemoContent[])[] {
  if (!Array.isArray(content)) return [[content as DemoContent]];
  return Array.isArray(content[0])
    ? (content as readonly (readonly DemoContent[])[])
    : [content as readonly DemoContent[]];
}

const lexer = new LexerTreeBuilder();

/** The formula as it reads after being dragged so many rows down and columns right. */
function moveFormula(formula: string, down: number, right: number): string {
  return down === 0 && right === 0 ? formula : lexer.moveFormulaRefOffset(formula, right, down);
}

/** Lets a range of whole columns or rows end where the sheet's contents do. */
function closeOver(range: IRange, used: { rows: number; columns: number }): IRange {
  const openRows = Number.isNaN(range.startRow);
  const openColumns = Number.isNaN(range.startColumn);
  return {
    startRow: openRows ? 0 : range.startRow,
    endRow: openRows ? used.rows - 1 : range.endRow,
    startColumn: openColumns ? 0 : range.startColumn,
    endColumn: openColumns ? used.columns - 1 : range.endColumn,
  };
}

function forEachCell(range: IRange, visit: (row: number, column: number) => void): void {
  for (let row = range.startRow; row <= range.endRow; row++) {
    for (let column = range.startColumn; column <= range.endColumn; column++) visit(row, column);
  }
}

function toCellData(
  cells: readonly Cell[],
  styleId: DemoSurroundings["styleId"],
): Record<number, Record<number, ICellData>> {
  const data: Record<number, Record<number, ICellData>> = {};
  for (const { row, column, content, styles } of cells) {
    (data[row] ??= {})[column] = { ...content, s: styleId(styles) };
  }
  return data;
}

/** Widths or heights by address, spread over every single column or row they cover. */
function sizes<T>(
  byAddress: Readonly<Record<string, number>> | undefined,
  side: "Row" | "Column",
  toSize: (pixels: number) => T,
): Record<number, T> {
  return Object.fromEntries(
    entries(byAddress).flatMap(([address, pixels]) => {
      const range = parseRange(address);
      const first = range[`start${side}`];
      const last = range[`end${side}`];
      return Array.from({ length: last - first + 1 }, (_, index) => [
        first + index,
        toSize(pixels),
      ]);
    }),
  );
}

function freezeAt(address: string): IFreeze {
  const { startRow, startColumn } = parseRange(address);
  return { xSplit: startColumn, ySplit: startRow, startRow, startColumn };
}

function entries<T>(record: Readonly<Record<string, T>> | undefined): [string, T][] {
  return Object.entries(record ?? {});
}
