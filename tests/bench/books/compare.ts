import { performance } from "node:perf_hooks";
import { isError, type CellValue } from "../../../src/xlsx/model";
import { lookAt, spare, workFolder } from "../../cli/support";
import { randomBook, type Check } from "./randomBook";

/** The commands that work a workbook out. In each one's result every cell holds the same values. */
const COMMANDS = ["calc", "plain", "portable"] as const;

/** What came of random workbooks. */
export interface Comparison {
  books: number;
  /** How many values were compared, of all three results. */
  values: number;
  /** How many of those our functions gave, and how many of these are errors. */
  ours: number;
  errors: number;
  /** What came out otherwise, each with its book; the seed and the number make a book again. */
  readonly differences: string[];
  /** The most that one command took for one book, in milliseconds, and where that was. */
  slowest: { readonly milliseconds: number; readonly where: string };
  /** The most memory that the process had, in megabytes. */
  megabytes: number;
  readonly called: Set<string>;
}

/** Makes random workbooks, sends each through every command, and compares all cells with what is expected. */
export async function compareBooks(seed: number, numbers: Iterable<number>): Promise<Comparison> {
  const comparison: Comparison = {
    ...{ books: 0, values: 0, ours: 0, errors: 0, megabytes: 0 },
    slowest: { milliseconds: 0, where: "" },
    differences: [],
    called: new Set(),
  };
  const folder = workFolder();
  try {
    // The engine's start, which only the first book would wait for, is not what is measured.
    await spare("calc", folder.put("first.xlsx", randomBook(seed, 0).bytes));
    for (const number of numbers) {
      const { bytes, checks, called } = randomBook(seed, number);
      comparison.books++;
      for (const id of called) comparison.called.add(id);
      const input = folder.put("book.xlsx", bytes);
      for (const command of COMMANDS) {
        const start = performance.now();
        const { err } = await spare(command, input, "-o", folder.path("out.xlsx"));
        const milliseconds = performance.now() - start;
        if (milliseconds > comparison.slowest.milliseconds)
          comparison.slowest = { milliseconds, where: `book ${number}, ${command}` };
        comparison.megabytes = Math.max(comparison.megabytes, process.memoryUsage().rss / 2 ** 20);
        const note = (what: string) =>
          comparison.differences.push(`SEED=${seed}, book ${number}, ${command}: ${what}`);
        if (err !== "") note(err.trim());
        else compareFile(folder.bytes("out.xlsx"), command, checks, comparison, note);
      }
    }
  } finally {
    folder.remove();
  }
  return comparison;
}

function compareFile(
  bytes: Uint8Array,
  command: (typeof COMMANDS)[number],
  checks: readonly Check[],
  comparison: Comparison,
  note: (what: string) => void,
): void {
  const { value, formulas } = lookAt(bytes);
  for (const { sheet, address, formula, expected } of checks) {
    const found = value(sheet, address);
    comparison.values++;
    if (formula !== undefined) {
      comparison.ours++;
      if (isError(expected)) comparison.errors++;
    }
    if (isSame(found, expected)) continue;
    const what = formula === undefined ? "" : ` (${formula})`;
    note(`${sheet}!${address} holds ${shown(found)} instead of ${shown(expected)}${what}`);
  }
  // A copy asks for nothing of the add-in's.
  const asking = command === "calc" ? [] : formulas.filter(({ text }) => text.includes("SPARE"));
  for (const { text } of asking) note(`the copy still has ${text}`);
}

/** Numbers to 12 digits, text and errors' codes to the letter. */
function isSame(one: CellValue, other: CellValue): boolean {
  if (typeof one !== "number" || typeof other !== "number") return one === other;
  return Math.abs(one - other) <= 1e-12 * Math.abs(other);
}

const shown = (value: CellValue) => (value === null ? "nothing" : JSON.stringify(value));
