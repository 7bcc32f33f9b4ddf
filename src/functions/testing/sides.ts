import {
  HostError,
  invalid,
  isGiven,
  labelIdentity,
  keyContent,
  numberAt,
  quoted,
  readCell,
  readOne,
  toRange,
  type Labels,
  nthRow,
} from "../../cells";
import type { TrainingGroup } from "../../core/testing/groupChange";
import { labelAt } from "./labelAt";

/** One of two groups: its name as the sheet has it, and its rows. */
export interface Side {
  readonly name: string;
  readonly rows: readonly number[];
}

/** Reads a column of groups that must hold exactly two labels; `first` says which of them is A. */
export function readSides(
  labels: Labels,
  firstRow: number,
  isThere: (row: number) => boolean,
  first: unknown,
): [a: Side, b: Side] {
  const sides = new Map<string, { name: string; rows: number[] }>();
  labels.cells.forEach(([raw], row) => {
    const identity = labelAt(labels, row, firstRow);
    if (identity === "" || identity === "0") {
      if (!isThere(row)) return;
      throw invalid(
        `${nthRow(row + firstRow)} of group is blank beside a score; expected a group's name`,
      );
    }
    const side = sides.get(identity) ?? { name: String(keyContent(raw)).trim(), rows: [] };
    side.rows.push(row);
    sides.set(identity, side);
  });
  const found = [...sides.values()];
  const [one, other] = found;
  if (!one || !other || found.length > 2) {
    const names = found.slice(0, 5).map(({ name }) => quoted(name));
    const list = names.length === 0 ? "" : ` (${names.join(", ")}${found.length > 5 ? ", …" : ""})`;
    throw invalid(`group has ${found.length} labels${list}; expected exactly two`);
  }
  const wanted = isGiven(first) ? labelIdentity(readCell(oneLabel(first))) : "";
  if (wanted === "" || wanted === "0") return [one, other];
  const a = sides.get(wanted);
  if (a === undefined) {
    throw invalid(
      `first is ${quoted(wanted)}; expected one of the groups, ` +
        `${quoted(one.name)} or ${quoted(other.name)}`,
    );
  }
  return [a, a === one ? other : one];
}

/** The one cell of an argument that names something. */
function oneLabel(argument: unknown): unknown {
  return readOne({
    name: "first",
    range: toRange(argument),
    read: (value) => (value instanceof HostError ? invalid(`first holds ${value.code}`) : value),
    header: "never",
  });
}

/** The complete pairs of one group, and how many of its athletes have none. */
export function pairsOf(
  { name, rows }: Side,
  before: readonly (number | null)[],
  after: readonly (number | null)[],
): TrainingGroup & { readonly lost: number } {
  const whole = rows.flatMap((row) => {
    const [one, other] = [numberAt(before, row), numberAt(after, row)];
    return one === null || other === null ? [] : [{ before: one, after: other }];
  });
  return {
    name,
    before: whole.map((pair) => pair.before),
    after: whole.map((pair) => pair.after),
    lost: rows.length - whole.length,
  };
}
