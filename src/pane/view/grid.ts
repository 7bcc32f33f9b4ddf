import { CellError, widthOf, type Grid } from "../../cells";
import { shownIn } from "../../cells/shown";
import { formatsIn, type Insertion } from "../insert/insertion";
import { element } from "../../elements/element";

const ROWS = 12;
const COLUMNS = 10;

/** Cells as a small table, each as the insertion will show it; of a large result, its first corner and how much more there is. */
export function gridTable(grid: Grid, caption: string, insertion?: Insertion): HTMLElement {
  const shown = grid.slice(0, ROWS).map((row) => row.slice(0, COLUMNS));
  const formatAt = formatsIn(insertion);
  const rows = shown.map((row, down) =>
    element(
      "tr",
      {},
      ...row.map((content, right) => element("td", {}, cellText(content, formatAt(down, right)))),
    ),
  );
  const more = [
    grid.length > ROWS && `${grid.length - ROWS} more rows`,
    widthOf(grid) > COLUMNS && `${widthOf(grid) - COLUMNS} more columns`,
  ].filter(Boolean);
  return element(
    "div",
    { className: "cells", tabIndex: 0, role: "group", "aria-label": caption },
    element("table", {}, element("tbody", {}, ...rows)),
    more.length > 0 && element("p", { className: "quiet" }, `and ${more.join(" and ")}`),
  );
}

/** A cell's content as the cell shows it, an error with its reason. */
export function cellText(content: Grid[number][number], format?: string): string {
  if (content instanceof CellError) return `${content.code} ${content.message}`;
  return typeof content === "number" ? shownIn(content, format) : content;
}
