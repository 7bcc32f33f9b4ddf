import { readTable, requiredIn } from "../../cells";
import type { Block } from "../../core/plan/blockPlan";
import * as quantities from "../quantities";

const BLOCK_COLUMNS = {
  weeks: quantities.weeks(),
  setsFirst: quantities.sets("sets first"),
  setsLast: quantities.sets("sets last"),
  repsLow: quantities.reps("reps low"),
  repsHigh: quantities.reps("reps high"),
  reserveFirst: quantities.reserve("reserve first"),
  reserveLast: quantities.reserve("reserve last"),
};

/** The blocks of a plan, a row a block, with a name before the numbers if it likes. */
export function readBlocks(given: unknown): Block[] {
  const columns = Object.entries(BLOCK_COLUMNS);
  const rows = readTable(given, {
    name: "blocks",
    columns: columns.map(([, quantity]) => quantity),
    canHaveLabels: true,
  });
  return rows.map((row) => {
    const numbers = Object.fromEntries(
      columns.map(([key, quantity], column) => [key, requiredIn(row, column, quantity)]),
    ) as Record<keyof typeof BLOCK_COLUMNS, number>;
    return { ...numbers, row: row.row, ...(row.label === undefined ? {} : { name: row.label }) };
  });
}
