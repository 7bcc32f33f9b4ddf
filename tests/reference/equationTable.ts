import { elementAt, named } from "../present";
import { readReference, type ExpectedError, type Match, type Row } from "./data";

type Entry = Readonly<Record<string, number | ExpectedError>> & { readonly t: number };

interface EquationData {
  readonly source: string;
  readonly mark: string;
  readonly match: Match;
  readonly table: readonly Entry[];
  readonly largestDeviation: {
    readonly match: Match;
    readonly equations: Readonly<
      Record<string, { deviation: number; reps: number; meanAbsolute: number }>
    >;
  };
}

const read = () => readReference("equations") as EquationData;

/** Reps down and reserves across when PERCENTCHART is given neither. */
const CHART_REPS = Array.from({ length: 12 }, (_, index) => index + 1);
const CHART_RESERVES = [0, 1, 2, 3, 4];

/** The table of the published equations: fractions of 1RM by equation and reps to failure. */
export const equationTable = {
  read,
  names: () => Object.keys(elementAt(read().table, 0)).filter((name) => name !== "t"),
  /** The table as calls of the two functions that show it. */
  rows(): Row[] {
    const { table, source, mark, match } = read();
    const at = new Map(table.map((entry) => [entry.t, entry]));
    const common = { match, source, mark };
    return equationTable.names().flatMap((equation) => [
      ...table.map((entry) => ({
        ...common,
        function: "PERCENT1RM",
        arguments: [entry.t, 0, equation],
        expected: named(entry, equation),
      })),
      {
        ...common,
        function: "PERCENTCHART",
        arguments: [null, null, equation],
        expected: [
          ["", ...CHART_RESERVES],
          ...CHART_REPS.map((reps) => [
            reps,
            ...CHART_RESERVES.map((reserve) => chartCell(at.get(reps + reserve)?.[equation])),
          ]),
        ],
      },
    ]);
  },
};

/** A cell beyond the equation's reach is empty in the chart; reps the table leaves out are not compared. */
function chartCell(entry: number | ExpectedError | undefined): number | string | null {
  if (typeof entry === "object") return "";
  return entry ?? null;
}
