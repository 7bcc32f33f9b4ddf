import { LAST_COLUMN, LAST_ROW, sheetIn, type Area } from "../../formula/address";
import { areaOfToken, around } from "../../formula/areas";
import { resolveTables, type Standing, type Table } from "../../formula/tables";
import { tokensOf, type Token } from "../../formula/tokens";
import { LIMITS } from "../limits";
import type { NameModel, SheetModel } from "../model";
import { cellCount } from "./bounds";

/** Says how many cells formulas read. */
export interface CellCounter {
  /** Of a formula, whole columns and rows as far as they are used, and names as what they stand for. */
  read(formula: string, standing: Standing): number;
  /** The name in a formula that reads more than can be read, if one does. */
  largeNameIn(formula: string): string | undefined;
}

export function cellCounter(
  sheets: readonly SheetModel[],
  names: readonly NameModel[],
  tables: readonly Table[],
): CellCounter {
  const used = new Map(sheets.map((sheet) => [sheet.name.toLowerCase(), extentOf(sheet)]));
  const ofNames = new Map<string, number>();
  const texts = new Map(names.map(({ name, text }) => [name.toLowerCase(), text]));
  const open = new Set<string>();
  for (const key of texts.keys()) ofName(key);
  const large = [
    ...[...ofNames].filter(([, cells]) => cells > WORTH_COUNTING).map(([name]) => name),
    ...tables.filter(({ area }) => cellCount(area) > WORTH_COUNTING).map(({ name }) => name),
  ];
  const namesLarge = large.length > 0 && new RegExp(large.map(escaped).join("|"), "i");

  return {
    read(formula, standing) {
      // A few single cells need no counting.
      if (!/[:[]/.test(formula) && !(namesLarge && namesLarge.test(formula))) return 0;
      return count(formula, standing);
    },
    largeNameIn: (formula) =>
      tokensOf(formula).find((token) => (ofNames.get(keyOf(token)) ?? 0) > LIMITS.cellsRead)?.text,
  };

  /** Every name is gone through once; one that means itself, or lies too deep, is never computed. */
  function ofName(key: string): number {
    const known = ofNames.get(key);
    if (known !== undefined) return known;
    if (open.has(key) || open.size >= LIMITS.names.depth) return 0;
    open.add(key);
    const cells = count(texts.get(key)!, NOWHERE);
    open.delete(key);
    ofNames.set(key, cells);
    return cells;
  }

  function count(formula: string, standing: Standing): number {
    const tokens = tokensOf(resolveTables(formula, tables, standing));
    let total = 0;
    let range: Range | undefined;
    tokens.forEach((token, index) => {
      if (texts.has(keyOf(token))) total += ofName(keyOf(token));
      const area = areaOfToken(token);
      if (!area) return;
      const whole = token.kind !== "cell";
      const before = tokens[index - 1];
      if (before?.text === ":" && range) {
        total -= cellsIn(range);
        range = { ...range, area: around(range.area, area), whole: range.whole && whole };
      } else {
        const sheet = before?.kind === "sheet" ? sheetIn(before.text) : standing.sheet;
        range = { area, whole, sheet };
      }
      total += cellsIn(range);
    });
    return total;
  }

  function cellsIn({ area, whole, sheet }: Range): number {
    if (!whole) return cellCount(area);
    const extent = used.get(sheet.toLowerCase()) ?? { rows: 0, columns: 0 };
    const isColumns = area.startRow === 0 && area.endRow === LAST_ROW;
    const isRows = area.startColumn === 0 && area.endColumn === LAST_COLUMN;
    return cellCount({
      ...area,
      endRow: isColumns ? extent.rows + LIMITS.room.rows : area.endRow,
      endColumn: isRows ? extent.columns + LIMITS.room.columns : area.endColumn,
    });
  }
}

interface Range {
  readonly area: Area;
  /** Whether it is made of whole columns or rows, which end where the sheet's contents do. */
  readonly whole: boolean;
  readonly sheet: string;
}

/** Smaller ranges add up to too much in no formula of the length that is allowed. */
const WORTH_COUNTING = LIMITS.cellsRead / LIMITS.formulaLength;

const NOWHERE: Standing = { sheet: "", row: -1, column: -1 };

const keyOf = ({ kind, text }: Token) =>
  kind === "name" || kind === "call" ? text.toLowerCase() : "";

const escaped = (name: string) => name.replace(/[^\p{L}\p{N}]/gu, "\\$&");

/** How many rows and columns of a sheet are used. */
function extentOf({ rows }: SheetModel): { rows: number; columns: number } {
  let columns = 0;
  for (const { cells } of rows) columns = Math.max(columns, (cells.at(-1)?.column ?? -1) + 1);
  return { rows: (rows.at(-1)?.row ?? -1) + 1, columns };
}
