import { onlyCell } from "../../cells";
import type { Worked } from "../formula/work";
import { element } from "../../elements/element";
import { formatsIn, type Insertion } from "../insert/insertion";
import { cellText, gridTable } from "./grid";

/** What a call gives, as the form shows it before it is inserted: with the digits that its cells will have. */
export function resultOf(worked: Worked, insertion?: Insertion): HTMLElement[] {
  switch (worked.kind) {
    case "unknown":
      return [element("p", { className: "quiet" }, `No preview: ${worked.reason}.`)];
    case "error":
      return [
        element(
          "p",
          { className: "trouble" },
          element("strong", {}, worked.code),
          ` ${worked.message}`,
        ),
      ];
    case "result": {
      const only = onlyCell(worked.grid);
      if (only === undefined) return [gridTable(worked.grid, "What the formula gives", insertion)];
      if (only === "") {
        return [element("p", { className: "quiet" }, "Nothing yet: a cell is blank.")];
      }
      const text = cellText(only, formatsIn(insertion)(0, 0));
      return [element("p", {}, "gives ", element("output", {}, text))];
    }
  }
}
