import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { implementations } from "../../../src/functions/implementations";
import { bookOf, type Book, type FormulaCell } from "../../../src/recalculate/book";
import { knownFunctions } from "../../../src/engine/known";
import { holdResult, type GrowingHolds } from "../../../src/recalculate/holds";
import { computeInEngine } from "../../../src/recalculate/inEngine";
import { findUnable } from "../../../src/recalculate/unable";
import { readMetadata } from "../../../src/tools/catalogue";
import { readPackage, readWorkbook } from "../../../src/xlsx";
import { convert } from "../../libreOffice";
import { agree, type Case, type Values } from "./cases";
import { buildWorkbook, place } from "./workbook";

/** What a formula comes to, or why it was left as it was. */
export interface Computed {
  readonly values: Values;
  readonly left?: string;
}

/** All cases through our engine, the way `calc` takes the formulas of a workbook that it computes. */
export async function computeHere(cases: readonly Case[]): Promise<ReadonlyMap<Case, Computed>> {
  const book = bookOf(readWorkbook(readPackage(buildWorkbook(cases))));
  const outcomes = await computeAll(book);
  const at = new Map(
    [...outcomes].map(([{ sheet, row, column }, outcome]) => [
      `${sheet.name} ${row} ${column}`,
      outcome,
    ]),
  );
  return new Map(
    [...place(cases)].map(([one, { sheet, row, column }]) => {
      const { values, left } = at.get(`${sheet} ${row} ${column}`)!;
      return [one, { values, left }];
    }),
  );
}

/** Every formula of a workbook, but for those that `calc` leaves as they are. */
async function computeAll(book: Book): Promise<Map<FormulaCell, Computed>> {
  const computed = new Map<FormulaCell, Computed>();
  const unable = findUnable(book, await knownFunctions());
  const leave = (cell: FormulaCell, left: string) =>
    computed.set(cell, { values: [[cell.saved]], left });
  for (const cell of book.formulas) {
    const reason = unable(cell);
    if (reason !== undefined) leave(cell, reason);
  }
  const holds: GrowingHolds = { cut: new Set(), beyond: new Map() };
  const functions = { metadata: readMetadata(), implementations };
  for (;;) {
    const formulas = book.formulas.filter((cell) => !computed.has(cell));
    const { results } = await computeInEngine(book, formulas, holds, [], () => false, functions);
    let again = false;
    for (const [cell, result] of results) {
      const hold = holdResult(cell, result, false, holds);
      if (hold !== undefined) again = true;
      if (hold !== undefined && hold !== "held") leave(cell, hold);
    }
    if (again) continue;
    for (const [cell, { values }] of results) computed.set(cell, { values });
    return computed;
  }
}

/** All cases through LibreOffice. */
export function computeInLibreOffice(cases: readonly Case[]): ReadonlyMap<Case, Values> {
  const folder = mkdtempSync(join(tmpdir(), "spare-"));
  try {
    const path = join(folder, "formulas.xlsx");
    writeFileSync(path, buildWorkbook(cases));
    convert([path], "xlsx", join(folder, "out"));
    const book = readWorkbook(
      readPackage(new Uint8Array(readFileSync(join(folder, "out", "formulas.xlsx")))),
    );
    return new Map(
      [...place(cases)].map(([one, placed]) => {
        const sheet = book.sheets.find(({ name }) => name === placed.sheet)!;
        const valueAt = (row: number, column: number) =>
          sheet.rows.find((each) => each.row === row)?.cells.find((each) => each.column === column)
            ?.value ?? null;
        const values = Array.from({ length: one.rows }, (_row, row) =>
          Array.from({ length: one.columns }, (_column, column) =>
            valueAt(placed.row + row, placed.column + column),
          ),
        );
        return [one, values];
      }),
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Whether a formula came to what it should, or was left where it should be. */
export function isRight({ expected, isLeft }: Case, { values, left }: Computed): boolean {
  if (isLeft || left !== undefined) return isLeft && left !== undefined;
  return expected !== undefined && agree(values, expected);
}

export function summary(cases: readonly Case[], computed: ReadonlyMap<Case, Computed>): string {
  const right = cases.filter((one) => isRight(one, computed.get(one)!));
  const left = right.filter(({ isLeft }) => isLeft).length;
  return (
    `${right.length - left} of ${cases.length} formulas agree with LibreOffice or the value worked out by hand, ` +
    `${left} are left as they were saved, ${cases.length - right.length} differ`
  );
}
