import { openContents } from "../../src/engine/headless";
import { implementations } from "../../src/functions/implementations";

/**
 * What a long column costs in the spreadsheet's engine, in user seconds: one lifted formula over all
 * rows, with a comparison beside it, and a formula filled down to each row. Linear means that the
 * last columns, seconds for 10,000 rows, hardly move.
 *
 * `npx tsx -e 'import("./tests/bench/engineColumns").then((m) => m.benchEngineColumns())'` runs this alone.
 */
export async function benchEngineColumns(): Promise<void> {
  await secondsFor(1, lifted);
  const results: Record<string, Record<string, number>> = {};
  for (const rows of [5_000, 10_000, 20_000, 40_000, 200_000]) {
    const spilling = await secondsFor(rows, lifted);
    const filling = await secondsFor(rows, filledDown);
    results[`${rows.toLocaleString("en")} rows`] = {
      "one lifted formula": round(spilling),
      "filled down": round(filling),
      "lifted, for 10,000": round((spilling / rows) * 10_000),
      "filled down, for 10,000": round((filling / rows) * 10_000),
    };
  }
  console.log("\nA long column in the engine, user seconds");
  console.table(results);
}

type Formulas = (row: number, rows: number) => readonly string[];

const lifted: Formulas = (row, rows) =>
  row === 1 ? [`=SPARE.E1RM(A1:A${rows},B1:B${rows},C1:C${rows}&"")`, `=C1:C${rows}=0`] : [];

const filledDown: Formulas = (row) => [`=SPARE.E1RM(A${row},B${row},C${row})`];

async function secondsFor(rows: number, formulas: Formulas): Promise<number> {
  const cells = Array.from({ length: rows }, (_, index) => {
    const row = index + 1;
    return [60 + (row % 80), 1 + (row % 10), row % 4, ...formulas(row, rows)];
  });
  const start = process.cpuUsage();
  const metadata = { functions: [{ id: "E1RM", parameters: [] }] };
  const book = await openContents({ One: cells }, {}, metadata, implementations);
  const seconds = process.cpuUsage(start).user / 1e6;
  const last = book.read("One", `D${rows}`);
  book.close();
  if (typeof last !== "number") throw new Error(`the last row came to ${String(last)}`);
  return seconds;
}

const round = (value: number) => Math.round(value * 100) / 100;
