import { HostError, holdsError, labelIdentity, readCell, type Labels } from "../../cells";

/** What identifies the label beside a row of data; `name` is the argument's, for messages. */
export function labelAt(labels: Labels, row: number, firstRow: number, name = "group"): string {
  const value = readCell(labels.cells[row]?.[0]);
  if (value instanceof HostError) throw holdsError(value, row + firstRow - 1, name);
  return labelIdentity(value);
}
