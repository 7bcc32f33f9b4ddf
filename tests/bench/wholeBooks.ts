import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { buildIfStale } from "../../src/tools/dist";
import { bookOf } from "../../src/recalculate/book";
import { implementations } from "../../src/functions/implementations";
import { cellAddress } from "../../src/formula/address";
import { callsOurs } from "../../src/formula/spelling";
import { readPackage, readWorkbook } from "../../src/xlsx";
import type { CellValue } from "../../src/xlsx/model";
import type { ReadSheet } from "../../src/xlsx/read/sheet";
import { readCases, type Case, type Values } from "../engine/differential/cases";
import { buildWorkbook } from "../engine/differential/workbook";
import { filledDown, tableOf } from "./commandLine";
import { runSpare } from "./runSpare";

/** The commands that work a workbook out. In each one's result every cell holds the same values. */
const COMMANDS = ["calc", "plain", "portable"] as const;

/** What our function comes to in a cell; nothing for cells that are to come to what was saved, or to keep it. */
type Expected = (sheet: ReadSheet, row: number, column: number) => CellValue | undefined;

interface WholeBook {
  readonly what: string;
  readonly bytes: () => Uint8Array;
  readonly ours: Expected;
}

/** E1RM of the load, reps and reserve in the row's first three cells. */
const e1rmInD: Expected = (sheet, row, column) => {
  if (column !== 3 || row === 0) return undefined;
  const given = [0, 1, 2].map((at) => [[sheet.cellAt(row, at)?.value ?? null]]);
  return implementations.E1RM(...given)[0]![0] as CellValue;
};

/** An ordinary formula that a coach has beside it, with its right value. */
const volume = (row: number) =>
  `<c r="E${row}"><f>A${row}*B${row}</f><v>${(80 + (row % 60) * 2.5) * (1 + (row % 8))}</v></c>`;

/** Cells of the differential suite's workbook that hold what our functions come to, which most of its formulas read. */
const OURS: Readonly<Record<string, string>> = {
  "Log!D2": "_xldudf_SPARE_ROUNDLOAD(99,2.5)",
  "Log!D11": "_xldudf_SPARE_ROUNDLOAD(82,2.5)",
  "Data!B2": "_xldudf_SPARE_ROUNDLOAD(12.1,2.5)",
  "W1!B2": "_xldudf_SPARE_SESSIONLOAD(8,50)",
};

/** What is saved for a formula that we say we cannot compute: whatever another program made of it. */
const KEPT: Values = [["as it was saved"]];

const everyFormula = (formulas: Readonly<Record<string, string>>): Uint8Array => {
  const values = ({ expected }: Case) => expected ?? KEPT;
  return buildWorkbook(readCases(), { values, formulas });
};

const books: readonly WholeBook[] = [
  {
    what: "a log of 200,000 sets, E1RM filled down, and an ordinary formula in each row",
    bytes: () => filledDown(200_000, volume),
    ours: e1rmInD,
  },
  {
    what: "a Table of 30,000 sets with a calculated column",
    bytes: () => tableOf(30_000),
    ours: e1rmInD,
  },
  {
    what: "every formula of the differential suite with its right value, and one of ours that next to nothing reads",
    bytes: () => everyFormula({ "W3!C2": "_xldudf_SPARE_SESSIONLOAD(5,6)" }),
    ours: () => undefined,
  },
  {
    what: "the same, and four of ours that most of them read",
    bytes: () => everyFormula(OURS),
    ours: () => undefined,
  },
];

/** Whole books through the built command line: what it took, and every cell of the results beside what it should be. */
export async function benchWholeBooks(only?: number): Promise<void> {
  await buildIfStale(["cli"]);
  const folder = mkdtempSync(join(tmpdir(), "spare-whole-"));
  const differences: string[] = [];
  try {
    for (const [number, { what, bytes, ours }] of books.entries()) {
      if (only !== undefined && only !== number) continue;
      console.log(`\n${what}`);
      const input = join(folder, "book.xlsx");
      const output = join(folder, "out.xlsx");
      writeFileSync(input, bytes());
      const results = COMMANDS.map((command) => {
        const { status, seconds, user, megabytes } = runSpare(command, input, "-o", output);
        const compared = compare(input, output, ours);
        differences.push(...compared.differences.map((each) => `${command}: ${each}`));
        const took = { status, seconds: Math.round(seconds), "user s": user, MB: megabytes };
        return { command, ...took, ...compared, differences: compared.differences.length };
      });
      console.table(results);
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
  for (const difference of differences.slice(0, 50)) console.log(difference);
}

/** Every cell of both files: where nothing of ours stands, it has to hold to the last digit what it held. */
function compare(input: string, output: string, ours: Expected) {
  const [before, after] = [input, output].map((path) =>
    bookOf(readWorkbook(readPackage(new Uint8Array(readFileSync(path))))),
  );
  const differences: string[] = [];
  let values = 0;
  let calculated = 0;
  for (const [at, sheet] of before!.sheets.entries()) {
    const other = after!.sheets[at]!;
    for (const { row, cells } of sheet.rows) {
      for (const { column, value, formula } of cells) {
        const isOurs = formula !== undefined && callsOurs(formula.text);
        const own = ours(sheet, row, column) ?? (isOurs ? value : undefined);
        const found = other.cellAt(row, column)?.value ?? null;
        values++;
        if (own !== undefined) calculated++;
        if (own === undefined ? found === value : isSame(found, own)) continue;
        const shown = [found, own ?? value].map((each) => JSON.stringify(each));
        differences.push(
          `${sheet.name}!${cellAddress(row, column)} holds ${shown.join(" instead of ")}`,
        );
      }
    }
    const more = cellsIn(other) - cellsIn(sheet);
    if (more !== 0) differences.push(`${sheet.name} has ${more} cells more than before`);
  }
  return { values, calculated, differences };
}

const cellsIn = ({ rows }: ReadSheet) => rows.reduce((sum, { cells }) => sum + cells.length, 0);

/** Numbers to 12 digits. */
function isSame(one: CellValue, other: CellValue): boolean {
  if (typeof one !== "number" || typeof other !== "number") return one === other;
  return Math.abs(one - other) <= 1e-12 * Math.abs(other);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const [only] = process.argv.slice(2).map(Number);
  await benchWholeBooks(only);
}
