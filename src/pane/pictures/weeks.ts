import { numberAt, readRows } from "../../cells";
import * as quantities from "../../functions/quantities";
import { dealColumns, headingsOf, textOf, withoutBlankEdges } from "./columns";
import { Unreadable, type Cells } from "./picture";
import { dayText } from "./text";

/** Weeks in the order of the table, each with its block where the table has one. */
export interface WeeklyLoad {
  /** What the weeks are headed. */
  readonly by: string;
  readonly weeks: readonly Week[];
}

/** One of them, with what LOGSUMMARY sums up. */
export interface Week {
  readonly block: string | undefined;
  readonly label: string;
  readonly volumeLoad: number | null;
  readonly closeSets: number | null;
}

const MEASURES = {
  volumeLoad: { name: "volume load", headed: /^volume load/i },
  closeSets: { name: "close sets", headed: /^close sets/i },
} as const;

/** The headings that can follow the keys in a summary of a log. */
const AFTER_KEYS = /^(sets|reps|volume load|close sets)\b/i;

/** Reads a summary of a log by week, or by block and week. */
export function readWeeks(values: Cells): WeeklyLoad {
  const cells = withoutBlankEdges(values);
  const headings = headingsOf(cells);
  const keys = headings?.findIndex((heading) => AFTER_KEYS.test(heading)) ?? -1;
  if (headings === undefined || keys === -1) {
    throw new Unreadable(
      "found no heading volume load or close sets; expected the table of LOGSUMMARY with its headings",
    );
  }
  if (keys === 0 || keys > 2) {
    throw new Unreadable(
      `found ${keys === 0 ? "no column" : `${keys} columns`} before the sums; ` +
        "expected the week, or the block and the week",
    );
  }
  const { columns } = dealColumns(cells, MEASURES);
  const { count, numbers } = readRows({
    volumeLoad: {
      given: columns.volumeLoad,
      quantity: quantities.atLeast0("volume load"),
    },
    closeSets: { given: columns.closeSets, quantity: quantities.atLeast0("close sets") },
  });
  const weeks: Week[] = [];
  for (let row = 0; row < count; row++) {
    const key = (cells[row + cells.length - count] ?? []).slice(0, keys).map(keyText);
    const volumeLoad = numberAt(numbers.volumeLoad, row);
    const closeSets = numberAt(numbers.closeSets, row);
    if (key.every((part) => part === "") || (volumeLoad === null && closeSets === null)) continue;
    const [label = "", block] = key.reverse();
    weeks.push({ block, label, volumeLoad, closeSets });
  }
  if (weeks.length === 0) {
    throw new Unreadable("no row has a key and a sum; expected the table of LOGSUMMARY");
  }
  return { by: headings[keys - 1]?.toLowerCase() || "week", weeks };
}

/** A week named by its first day is shown as one. */
function keyText(cell: unknown): string {
  return typeof cell === "number" && cell >= FIRST_DATE
    ? dayText(cell).replace(/ \d+$/, "")
    : textOf(cell);
}

/** The serial number of 6 July 2009: weeks are not numbered that high. */
const FIRST_DATE = 40_000;
