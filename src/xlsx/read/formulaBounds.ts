import { shortened } from "../../cells/text";
import { rowsAlike, type Table } from "../../formula/tables";
import { tokensOf, type Token } from "../../formula/tokens";
import { LIMITS } from "../limits";
import type { NameModel } from "../model";
import { checkLength, placeOf, refuse } from "./bounds";
import { cellCounter } from "./cellsRead";
import type { ReadSheet } from "./sheet";

/**
 * Refuses formulas from which no engine comes back: too long, with brackets too deep or endless signs, or that read
 * more cells than there is room for.
 */
export function checkFormulas(
  sheets: readonly ReadSheet[],
  names: readonly NameModel[],
  tables: readonly Table[],
): void {
  for (const { name, text } of names) {
    const called = () => `the name ${shortened(name)}`;
    if (name.length > LIMITS.nameLength) refuse(called, `has ${name.length} characters`);
    checkLength(called, text);
    checkShape(called, text);
  }
  const counter = cellCounter(sheets, names, tables);
  for (const sheet of sheets) {
    // Cells that share a formula read as many cells as the first of them.
    const groups = new Set<number>();
    const isRepeated = repeats(tables);
    for (const { cells } of sheet.rows) {
      for (const { row, column, formula } of cells) {
        if (!formula || (formula.group !== undefined && groups.has(formula.group))) continue;
        if (formula.group !== undefined) groups.add(formula.group);
        if (isRepeated(formula.text, row, column)) continue;
        const place = () => placeOf(sheet.name, row, column);
        checkShape(place, formula.text);
        const read = counter.read(formula.text, { sheet: sheet.name, row, column });
        if (read <= LIMITS.cellsRead) continue;
        const name = counter.largeNameIn(formula.text);
        const by = name === undefined ? "" : ` by the name ${shortened(name)}`;
        refuse(
          place,
          `reads ${read} cells${by}, more than the ${LIMITS.cellsRead} that can be read`,
        );
      }
    }
  }
}

/** Tells formulas that were checked already: in a table's column each row has the same text, and reads as many cells. */
function repeats(tables: readonly Table[]) {
  const above = new Map<
    number,
    { text: string; row: number; rows?: ReturnType<typeof rowsAlike> }
  >();
  return (text: string, row: number, column: number): boolean => {
    const last = above.get(column);
    if (last?.text === text) {
      last.rows ??= rowsAlike(tables, last.row);
      if (row >= last.rows.from && row < last.rows.before) return true;
    }
    above.set(column, { text, row });
    return false;
  };
}

/** Refuses a formula by its brackets and signs; most are short, and done with by a glance. */
function checkShape(place: () => string, formula: string): void {
  if (formula.length <= Math.min(LIMITS.formulaDepth, LIMITS.signsInARow)) return;
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  let depth = 0;
  let signs = 0;
  let colons = 0;
  for (const { kind, text } of tokens) {
    if (text === "(" || text === "{") depth++;
    if (text === ")" || text === "}") depth--;
    signs = isSign(text) ? signs + 1 : 0;
    if (text === ":") colons++;
    else if (!isEndOfRange(kind)) colons = 0;
    if (depth > LIMITS.formulaDepth) {
      refuse(place, `has a formula with brackets more than ${LIMITS.formulaDepth} deep`);
    }
    if (Math.max(signs, colons) > LIMITS.signsInARow) {
      refuse(place, `has a formula with more than ${LIMITS.signsInARow} signs in a row`);
    }
  }
}

const isSign = (text: string) => "+-@%#!".includes(text);

const isEndOfRange = (kind: Token["kind"]) =>
  ["cell", "columns", "rows", "name", "sheet"].includes(kind);
