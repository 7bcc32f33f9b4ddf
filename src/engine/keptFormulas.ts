import type { ICellData, IWorkbookData, Nullable } from "@univerjs/core";
import { cellAddress } from "../formula/address";
import { cannotCompute } from "../formula/cannotCompute";
import { namesModel } from "./data/names";

/**
 * A formula that the engine cannot work out keeps the value that its file has. In the open workbook
 * the cell holds that value, and the formula beside it, until somebody writes over the value; a file
 * that is saved has the formula again.
 */
export interface KeptFormula {
  readonly formula: string;
  readonly value: ICellData["v"];
}

/** How a file marks functions that are younger than its format. */
const FILE_MARKS = /_xlfn\.(?:_xlws\.)?/gi;

/** A cell with such a formula, for a person: "Log!B3". */
export interface KeptCell {
  readonly sheet: string;
  readonly address: string;
}

/** The kept formula of a cell, if it holds one and still shows its value. */
export function keptFormulaOf(cell: Nullable<ICellData>): KeptFormula | undefined {
  if (!cell) return undefined;
  const kept = cell.custom?.kept as KeptFormula | undefined;
  return kept && !cell.f && !cell.si && cell.v === kept.value ? kept : undefined;
}

/** The workbook with its formulas that the engine cannot compute kept as values, and where they are. */
export function keepFormulas(
  data: IWorkbookData,
  known: ReadonlySet<string>,
): { data: IWorkbookData; kept: KeptCell[] } {
  const names = new Set(namesModel(data).map(({ name }) => name.toLowerCase()));
  // The open workbook does not write out what several sheets stand for, so it can follow none of them.
  const judged = { known, sheets: [], isName: (text: string) => names.has(text.toLowerCase()) };
  const isComputed = (formula: string) =>
    cannotCompute(formula.replace(FILE_MARKS, ""), judged) === undefined;
  const kept: KeptCell[] = [];
  const changed = mapCells(data, (cell, sheet, row, column) => {
    if (!cell.f || cell.v === undefined || cell.v === null) return cell;
    if (isComputed(cell.f)) return cell;
    kept.push({ sheet, address: cellAddress(row, column) });
    const { f, ...rest } = cell;
    return { ...rest, custom: { ...cell.custom, kept: { formula: f, value: cell.v } } };
  });
  return { data: changed, kept };
}

/** The workbook as a file is to have it, its kept formulas in their cells. */
export function restoreFormulas(data: IWorkbookData): { data: IWorkbookData; kept: KeptCell[] } {
  const kept: KeptCell[] = [];
  const restored = mapCells(data, (cell, sheet, row, column) => {
    const found = keptFormulaOf(cell);
    if (!found) return cell;
    kept.push({ sheet, address: cellAddress(row, column) });
    return { ...cell, f: found.formula };
  });
  return { data: restored, kept };
}

function mapCells(
  data: IWorkbookData,
  change: (cell: ICellData, sheet: string, row: number, column: number) => ICellData,
): IWorkbookData {
  const sheets = Object.entries(data.sheets).map(([id, sheet]) => {
    const rows = Object.entries(sheet.cellData ?? {}).map(([row, cells]) => [
      row,
      Object.fromEntries(
        Object.entries((cells ?? {}) as Record<string, ICellData>).map(([column, cell]) => [
          column,
          change(cell, sheet.name ?? "", Number(row), Number(column)),
        ]),
      ),
    ]);
    return [id, { ...sheet, cellData: Object.fromEntries(rows) as typeof sheet.cellData }];
  });
  return { ...data, sheets: Object.fromEntries(sheets) as IWorkbookData["sheets"] };
}
