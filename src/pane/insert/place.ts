import type { Grid } from "../../cells";
import { areaAddress, cellAddress, columnLetters, parseCell } from "../../formula/address";
import type { Port, Target } from "../port";
import { referenceTo } from "../formula/reference";
import type { Rows } from "./besideRows";

/** Where a result is to stand. Rows and columns count from 0. */
export interface Spot {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
  /** Whether the row above is free for a heading. */
  readonly hasHeadingRow: boolean;
  /** Why it is this place, for the person who is about to insert. */
  readonly why: string;
}

/** How far to the right a free place is looked for. */
const FARTHEST = 60;

/**
 * Where a column of results goes that answers its columns row by row: into the selected cell's column where that is
 * free, else the first free one to the right of what it reads; always from the first row of what it reads on, as any
 * other start would put one lifter's result beside another's name.
 */
export async function besideSpot(
  rows: Rows,
  columns: number,
  target: Target,
  port: Pick<Port, "firstFilled" | "readRange">,
): Promise<Spot | string> {
  const sheet = rows.sheet ?? target.sheet;
  const spotAt = (column: number, hasHeadingRow: boolean, why: string): Spot => {
    const { first: row, count } = rows;
    return { sheet, row, column, rows: count, columns, hasHeadingRow, why };
  };
  const hasHeadingRow = rows.first > 0 && (await isHeadingRow(sheet, rows, port));
  const top = rows.first - (hasHeadingRow ? 1 : 0);
  const height = rows.first + rows.count - top;
  const filled = (column: number) =>
    port.firstFilled(referenceTo(sheet, spotAddress({ row: top, column, rows: height, columns })));

  const cell = parseCell(target.address);
  const isBeside = cell !== undefined && target.sheet === sheet && cell.column > rows.lastColumn;
  const asked = isBeside ? cell.column : rows.lastColumn + 1;
  const inTheWay = await filled(asked);
  if (inTheWay === undefined) {
    const isLevel = cell?.row === rows.first || (hasHeadingRow && cell?.row === top);
    return spotAt(asked, hasHeadingRow, isBeside && !isLevel ? notLevel(target, rows) : "");
  }
  const from = Math.max(asked, rows.lastColumn) + 1;
  for (let column = from; column < from + FARTHEST; column++) {
    if ((await filled(column)) === undefined) {
      return spotAt(column, hasHeadingRow, isBeside ? `${inTheWay} holds something. ` : "");
    }
  }
  return `No free column beside rows ${rows.first + 1} to ${rows.first + rows.count} was found.`;
}

const notLevel = ({ address }: Target, rows: Rows) =>
  `From ${address} on, each result would stand in another row than its own: rows ` +
  `${rows.first + 1} to ${rows.first + rows.count} are what it reads. `;

/** Whether words stand above the columns it reads. */
async function isHeadingRow(
  sheet: string,
  { first, lastColumn }: Rows,
  port: Pick<Port, "readRange">,
): Promise<boolean> {
  const above = referenceTo(sheet, `A${first}:${cellAddress(first - 1, lastColumn)}`);
  const cells = (await port.readRange(above)).flat();
  const words = cells.filter((cell) => cell !== null && cell !== "");
  return words.length > 0 && words.every((cell) => typeof cell === "string");
}

/** Where a table goes: from the selected cell on, where nothing stands in its way; else why not there. */
export async function tableSpot(
  grid: Grid,
  target: Target,
  port: Pick<Port, "firstFilled">,
): Promise<Spot | string> {
  const cell = parseCell(target.address);
  if (cell === undefined) return "Select the cell that the result is to start in.";
  const rows = grid.length;
  const columns = grid[0]?.length ?? 1;
  const { row } = cell;
  const filled = (column: number) =>
    port.firstFilled(referenceTo(target.sheet, spotAddress({ row, column, rows, columns })));
  const spotAt = (column: number, why: string): Spot => {
    const { sheet } = target;
    return { sheet, row, column, rows, columns, hasHeadingRow: false, why };
  };
  const inTheWay = await filled(cell.column);
  if (inTheWay === undefined) return spotAt(cell.column, "");
  let isApart = false;
  for (let column = cell.column + 1; column < cell.column + FARTHEST; column++) {
    const isFree = (await filled(column)) === undefined;
    // A free column before it keeps the two tables apart.
    if (isApart && isFree) {
      return spotAt(
        column,
        `${inTheWay} holds something, which a table from ${target.address} on would cover. `,
      );
    }
    isApart = isFree;
  }
  return `${inTheWay} is in the way, and no free place to the right of ${columnLetters(cell.column)} was found.`;
}

/** The address of the whole of it. */
export const spotAddress = ({
  row,
  column,
  rows,
  columns,
}: Pick<Spot, "row" | "column" | "rows" | "columns">): string =>
  areaAddress({
    startRow: row,
    startColumn: column,
    endRow: row + rows - 1,
    endColumn: column + columns - 1,
  });
