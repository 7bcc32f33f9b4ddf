import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { CALL_HEADINGS, reserveCalls } from "./reserveCalls";
import { LOG_HEADINGS, trainingLog } from "./trainingLog";

/** Writes the invented squad's logs, the same every time: `npx tsx shared/demo/generate/log.ts`. */
const SHEETS = join(import.meta.dirname, "..", "sheets");

/** A heading may hold a comma, before its unit; no cell holds a quote. */
const csvCell = (cell: number | string) => (String(cell).includes(",") ? `"${cell}"` : cell);

const csvOf = (headings: readonly string[], rows: readonly (readonly (number | string)[])[]) =>
  [headings, ...rows].map((row) => `${row.map(csvCell).join(",")}\n`).join("");

writeFileSync(join(SHEETS, "log.csv"), csvOf(LOG_HEADINGS, trainingLog()));
writeFileSync(join(SHEETS, "reserve-calls.csv"), csvOf(CALL_HEADINGS, reserveCalls()));
