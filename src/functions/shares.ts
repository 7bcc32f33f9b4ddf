import {
  CellError,
  HostError,
  invalid,
  isHeadingText,
  labelIdentity,
  quoted,
  readCell,
  readSetting,
  toRange,
  type CellValue,
  type Quantity,
  nthRow,
} from "../cells";
import { isBlankLabel } from "./blankLabel";

/** A table of how much each exercise counts for each muscle. */
export interface Shares {
  readonly muscles: readonly string[];
  /** Of each exercise, a share a muscle. */
  readonly rows: readonly (readonly number[])[];
  /** Where an exercise stands in `rows`, whatever its case; undefined where the table does not list it. */
  placeOf(exercise: CellValue): number | undefined;
}

const SHARE: Quantity = {
  name: "the share",
  expected: "1, 0.5, 0 or another share from 0 to 1",
  accepts: (value) => value >= 0 && value <= 1,
  zeroIsBlank: false,
};

/** Reads a `shares` argument: headings (exercise, then the muscles), then a row an exercise. A blank share is 0. */
export function readShares(argument: unknown): Shares {
  const { cells } = toRange(argument);
  const [headings = [], ...body] = cells;
  const columns = muscleColumns(headings, body);
  const places = new Map<string, number>();
  const rows: number[][] = [];
  body.forEach((row, index) => {
    const place = `${nthRow(index + 2)} of shares`;
    const exercise = readCell(row[0]);
    if (exercise instanceof HostError) throw invalid(`${place} holds ${exercise.code}`);
    const shares = columns.map((column) => readShare(row[column], place));
    if (isBlankLabel(exercise)) {
      if (shares.every((share) => share === 0)) return;
      throw invalid(`${place} has shares but no exercise`);
    }
    const identity = labelIdentity(exercise);
    if (places.has(identity)) {
      throw invalid(`${place} lists ${quoted(String(exercise))} a second time`);
    }
    places.set(identity, rows.length);
    rows.push(shares);
  });
  return {
    muscles: columns.map((column) => String(readCell(headings[column]))),
    rows,
    placeOf: (exercise) => places.get(labelIdentity(exercise)),
  };
}

/** The columns that a muscle heads; a column with neither heading nor content is not there. */
function muscleColumns(
  headings: readonly unknown[],
  body: readonly (readonly unknown[])[],
): number[] {
  const columns = headings
    .map((_heading, column) => column)
    .slice(1)
    .filter((column) => {
      const heading = readCell(headings[column]);
      if (typeof heading === "string" && isHeadingText(heading)) return true;
      const isEmpty = [headings, ...body].every((row) => isBlankLabel(readCell(row[column])));
      if (isEmpty) return false;
      throw invalid(
        `shares, column ${column + 1} has no heading; ` +
          "expected a first row of headings: exercise, then the muscles",
      );
    });
  if (columns.length === 0 || body.length === 0) {
    throw invalid(
      "shares is no table; expected headings (exercise, then the muscles) and a row an exercise",
    );
  }
  return columns;
}

function readShare(raw: unknown, place: string): number {
  const value = readCell(raw);
  if (value instanceof HostError) throw invalid(`${place} holds ${value.code}`);
  if (typeof value === "string" && isDash(value)) return 0;
  const share = readSetting(value, SHARE);
  if (share instanceof CellError) throw share.at(place);
  return share ?? 0;
}

/** How a table leaves a cell out. A word or an "x" is no such thing: it may mean 1. */
const isDash = (text: string) => !/[\p{L}\p{N}]/u.test(text);
