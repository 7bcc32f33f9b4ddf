import { CellError, widthOf, type Grid } from "../../cells";
import { element } from "./elements";

const ROWS = 12;
const COLUMNS = 10;

/** Cells as a small table; of a large result, its first corner and how much more there is. */
export function gridTable(grid: Grid, caption: string): HTMLElement {
  const shown = grid.slice(0, ROWS).map((row) => row.slice(0, COLUMNS));
  const rows = shown.map((row) =>
    element("tr", {}, ...row.map((content) => element("td", {}, cellText(content)))),
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

/** A cell's content as a cell of ordinary width shows it, an error with its reason. */
export function cellText(content: Grid[number][number]): string {
  if (content instanceof CellError) return `${content.code} ${content.message}`;
  return typeof content === "number" ? String(Number(content.toPrecision(6))) : content;
}
