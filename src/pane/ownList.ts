import { areaAddress, cellAddress, columnLetters, type Area } from "../formula/address";
import type { ListKind } from "../readySheets";
import type { Headings } from "./data";
import { columnsByHeading, plainHeading } from "./formula/headings";
import { areaOf, referenceTo } from "./formula/reference";
import { unitIn } from "./insert/heading";
import type { Port, Selection } from "./port";

/** Where the columns of a coach's own list stand, by the names that a ready sheet's formulas have for them. */
export type OwnColumns = Readonly<Record<string, string>>;

/** What to select for each kind of list, in plain words. */
export const LIST_WORDS: Readonly<Record<ListKind, string>> = {
  log: "your log with its headings: date, lifter, lift, load, reps, reserve",
  maxima: "your list of maxima with its headings: lifter, then a column a lift",
};

/** Rows left open below a list, so that it may grow. */
const ROOM: Readonly<Record<ListKind, number>> = { log: 1000, maxima: 30 };

const LOG = ["date", "lifter", "exercise", "load", "reps", "reserve"] as const;

/** Numbers beside a lifter's name that are no maximum of a lift. */
const NO_LIFT = /^(?:age|height|body ?mass|body ?weight|bodyweight|bw|mass|constant|year|born)\b/;

/** The columns of the selected list, if its headings are those of such a list. */
export async function ownList(
  kind: ListKind,
  { sheet, address, values }: Selection,
  headings: Headings,
  port: Pick<Port, "firstFilled">,
): Promise<OwnColumns | undefined> {
  const area = areaOf(address);
  const titles = (values[0] ?? []).map((title) => (typeof title === "string" ? title : ""));
  if (area === undefined || values.length < 2) return undefined;
  const found = columnsByHeading(
    (kind === "log" ? LOG : ["lifter"]).map((name) => ({ name, description: "" })),
    titles,
    headings,
  );
  const below = { ...area, startRow: area.endRow + 1, endRow: area.endRow + ROOM[kind] };
  const isFree = (await port.firstFilled(referenceTo(sheet, areaAddress(below)))) === undefined;
  const endRow = isFree ? below.endRow : area.endRow;
  const from = (startRow: number, first: number, last = first) =>
    referenceTo(
      sheet,
      fixed({
        startRow,
        endRow,
        startColumn: area.startColumn + first,
        endColumn: area.startColumn + last,
      }),
    );
  const unit = { unit: unitIn(titles) ?? "kg" };
  if (kind === "log") {
    const columns = LOG.map((name) => found.get(name));
    if (columns.includes(undefined)) return undefined;
    const [date, lifter, lift, load, reps, reserve] = columns as number[];
    const column = (place: number | undefined) => from(area.startRow, place!);
    return {
      by:
        lift === lifter! + 1
          ? from(area.startRow, lifter!, lift)
          : `HSTACK(${column(lifter)}, ${column(lift)})`,
      date: column(date),
      lifter: column(lifter),
      lift: column(lift),
      load: column(load),
      reps: column(reps),
      reserve: column(reserve),
      ...unit,
    };
  }
  const lifter = found.get("lifter");
  const lifts = lifter === undefined ? undefined : liftsBeside(lifter, titles, values);
  if (lifter === undefined || lifts === undefined) return undefined;
  const row = area.startRow;
  return {
    lifter: from(row + 1, lifter),
    lifts: referenceTo(
      sheet,
      fixed({
        startRow: row,
        endRow: row,
        startColumn: area.startColumn + lifts.first,
        endColumn: area.startColumn + lifts.last,
      }),
    ),
    maxima: from(row + 1, lifts.first, lifts.last),
    ...unit,
  };
}

/** The columns of lifts, side by side to the right of the names: headed by words, with numbers under them. */
function liftsBeside(
  lifter: number,
  titles: readonly string[],
  [, ...rows]: Selection["values"],
): { first: number; last: number } | undefined {
  const isLift = (column: number) => {
    const title = titles[column] ?? "";
    const cells = rows.map((row) => row[column]);
    return (
      title.trim() !== "" &&
      !NO_LIFT.test(plainHeading(title)) &&
      cells.some((cell) => typeof cell === "number")
    );
  };
  let first = lifter + 1;
  while (first < titles.length && !isLift(first)) first++;
  let last = first;
  while (isLift(last + 1)) last++;
  return first < titles.length ? { first, last } : undefined;
}

/** "$B$2:$B$40": the same cells, wherever the formula is filled to. */
function fixed({ startRow, startColumn, endRow, endColumn }: Area): string {
  const corner = (row: number, column: number) => `$${columnLetters(column)}$${row + 1}`;
  return cellAddress(startRow, startColumn) === cellAddress(endRow, endColumn)
    ? corner(startRow, startColumn)
    : `${corner(startRow, startColumn)}:${corner(endRow, endColumn)}`;
}
