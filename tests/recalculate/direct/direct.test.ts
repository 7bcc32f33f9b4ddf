import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { knownFunctions } from "../../../src/engine/known";
import { cellAddress } from "../../../src/formula/address";
import { implementations } from "../../../src/functions/implementations";
import { bookOf, type FormulaCell } from "../../../src/recalculate/book";
import type { DirectFormula } from "../../../src/recalculate/direct/expression";
import { formulaParser } from "../../../src/recalculate/direct/filledDown";
import { workOut } from "../../../src/recalculate/direct/workOut";
import { computeInEngine } from "../../../src/recalculate/inEngine";
import { indexFills } from "../../../src/recalculate/reach/fills";
import type { Result } from "../../../src/recalculate/result";
import { valuesOf } from "../../../src/recalculate/values";
import { readPackage, readWorkbook } from "../../../src/xlsx";
import { escapeXml } from "../../../src/xlsx/package";
import { buildBook } from "../../cli/support";
import { formula } from "./generate";

/*
 * What is worked out without the spreadsheet's engine must be what the engine comes to. The engine itself is held to
 * LibreOffice and to what functions are documented to do, in tests/engine/differential.
 */

const functions = {
  metadata: { functions: Object.keys(implementations).map((id) => ({ id, parameters: [] })) },
  implementations,
};

/** The cells that formulas read, one odd kind each, in A1 to H3. */
const cells = [
  [100, 82.5, 5, 8, 2, 0, null, ""],
  ["DNS", "80kg", "3", true, "#N/A", "#DIV/0!", -4, 0.1],
  [117.5, 3, 1.005, 12, 1, 30, 2.5, 1e12],
];

/** A workbook with these formulas in column J, none of them computed. */
function bookWith(formulas: readonly string[]) {
  const rows = Array.from({ length: Math.max(cells.length, formulas.length) }, (_, row) => {
    const written = (cells[row] ?? []).map((value, column) => cellXml(row, column, value));
    const formula = formulas[row];
    const own = formula === undefined ? "" : `<c r="J${row + 1}"><f>${escapeXml(formula)}</f></c>`;
    return `<row r="${row + 1}">${written.join("")}${own}</row>`;
  });
  const names = `<definedNames><definedName name="bar">Log!$A$1</definedName><definedName name="step">2.5</definedName></definedNames>`;
  const bytes = buildBook({ sheets: { Log: rows.join("") }, workbook: names });
  return bookOf(readWorkbook(readPackage(bytes)));
}

function cellXml(row: number, column: number, value: string | number | boolean | null): string {
  const at = cellAddress(row, column);
  if (value === null) return "";
  if (typeof value === "number") return `<c r="${at}"><v>${value}</v></c>`;
  if (typeof value === "boolean") return `<c r="${at}" t="b"><v>${Number(value)}</v></c>`;
  const type = value.startsWith("#") ? "e" : "str";
  return `<c r="${at}" t="${type}"><v>${escapeXml(value)}</v></c>`;
}

/** What formulas come to without the engine; nothing for those that are the engine's. */
async function withoutEngine(book: ReturnType<typeof bookWith>) {
  const parse = formulaParser(book);
  const parsed = new Map<FormulaCell, DirectFormula>();
  for (const cell of book.formulas) {
    const formula = parse(cell);
    if (formula) parsed.set(cell, formula);
  }
  const fills = indexFills(book.formulas);
  const values = valuesOf(book.sheets);
  const { results } = await workOut(book, parsed, fills, values, implementations, () => undefined);
  return { parsed, results };
}

const inEngine = async (book: ReturnType<typeof bookWith>, formulas: readonly FormulaCell[]) =>
  (
    await computeInEngine(
      book,
      formulas,
      { cut: new Set(), beyond: new Map() },
      [],
      () => true,
      functions,
    )
  ).results;

function shown({ values, failures: [failure] }: Result) {
  const value = values[0]?.[0];
  return { value: typeof value === "number" ? digits(value) : value, message: failure?.message };
}

/** Programs round the last digits of a sum each in its own way. */
const digits = (value: number) => (value === 0 ? 0 : Number(value.toPrecision(10)));

describe("without the engine", () => {
  it("generated formulas come to what the engine comes to", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(formula, { minLength: 200, maxLength: 200 }), async (formulas) => {
        const book = bookWith(formulas);
        const { results } = await withoutEngine(book);
        const engine = await inEngine(book, [...results.keys()]);
        const differences = [...results].flatMap(([cell, result]) => {
          const [one, other] = [shown(result), shown(engine.get(cell)!)];
          // The engine also asks calls that an IF passes by, and may tell what they say.
          const sameMessage = cell.text.includes("IF") || one.message === other.message;
          const same = one.value === other.value && sameMessage;
          return same ? [] : [{ formula: cell.text, one, other }];
        });
        expect(differences).toEqual([]);
        // Most are worked out here, or the test would say little.
        expect(results.size).toBeGreaterThan(80);
      }),
      { numRuns: 12, endOnFailure: true },
    );
  });

  it("the wrappers that coaches write need no engine", async () => {
    const formulas = [
      'IF(E1="","",_xldudf_SPARE_E1RM(A1,C1,E1))',
      'IF(OR(A1="",C1=""),"",ROUND(_xldudf_SPARE_E1RM(A1,C1,F1),1))',
      'IFERROR(_xldudf_SPARE_E1RM(B2,C1),"")',
      '_xlfn.IFNA(_xldudf_SPARE_E1RM(E2,C1),"–")',
      "MROUND(_xldudf_SPARE_E1RM(A1,C1)*0.8,2.5)",
      "INDEX(_xldudf_SPARE_E1RMBAND(A1,C1,E1),1,2)",
      "_xldudf_SPARE_E1RM(A1,C1,10-D1)",
      'IF(ISNUMBER(A1),_xldudf_SPARE_E1RM(A1,C1,E1)/bar,"")',
      '_xldudf_SPARE_E1RM(A1,C1,E1)&" kg"',
    ];
    const { results } = await withoutEngine(bookWith(formulas));
    expect(results.size).toBe(formulas.length);
  });

  it("a blank cell equals 0, FALSE and an empty text, as in the engine", async () => {
    const formulas = ["G1=FALSE", "FALSE=G1", "TRUE=G1", "G1<>TRUE", "G1=0", 'G1=""', "G1=1"];
    const book = bookWith(formulas);
    const { results } = await withoutEngine(book);
    const engine = await inEngine(book, book.formulas);
    const shownBy = (found: ReadonlyMap<FormulaCell, Result>) =>
      book.formulas.map((cell) => found.get(cell)?.values[0]?.[0]);
    expect(shownBy(results)).toEqual([true, true, false, true, true, true, false]);
    expect(shownBy(engine)).toEqual(shownBy(results));
  });

  it("is not said what the engine alone can tell", async () => {
    const formulas = [
      "_xldudf_SPARE_E1RM(A1,C1)+D2",
      "_xldudf_SPARE_E1RM(A1,C1)+C2",
      "SUM(_xldudf_SPARE_E1RM(A1:A3,C1:C3))",
      "-_xldudf_SPARE_E1RM(A1,C1)^2",
      "ROUND(C3,2)+_xldudf_SPARE_E1RM(A1,C1)",
      "IF(A2,1,_xldudf_SPARE_E1RM(A1,C1))",
      "_xldudf_SPARE_E1RMBAND(A1,C1)+1",
      "INDEX(_xldudf_SPARE_E1RMBAND(A1,C1),1,9)",
      "IF(G1,1,G1)+_xldudf_SPARE_E1RM(A1,C1)",
    ];
    const { results } = await withoutEngine(bookWith(formulas));
    expect([...results.keys()].map(({ text }) => text)).toEqual([]);
    // Each function that is taken here is one of the engine's.
    expect(await knownFunctions()).toContain("MROUND");
  });
});
