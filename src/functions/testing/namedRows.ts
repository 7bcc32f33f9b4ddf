import { invalid, readCell, type Labels } from "../../cells";
import { isBlankLabel } from "../blankLabel";

/** Which rows of a column of athletes name somebody; a row without a name is left out. */
export function namedRows(labels: Labels): (row: number) => boolean {
  const columns = labels.headings.length;
  if (columns > 1) throw invalid(`athlete has ${columns} columns; expected one column`);
  return (row) => !isBlankLabel(readCell(labels.cells[row]?.[0]));
}
