import { areaAddress, parseArea } from "../../../formula/address";
import type { ReadSheet } from "../../../xlsx/read/sheet";
import {
  childOf,
  escapeXml,
  numberOf,
  parseXml,
  relationshipsOf,
  type Package,
  type XmlElement,
} from "../../../xlsx/package";
import { withChange } from "../../../xlsx/patch/editPackage";
import { applyEdits, type Edit } from "../../../xlsx/patch/edits";
import { fromFileText } from "../../../xlsx/strings";
import { inside } from "./elements";
import { settle, type Outside } from "./place";

/**
 * The formulas that a table keeps for its columns, rewritten or taken away: the next row that is typed
 * into it is filled with them.
 */
export function editTables(file: Package, sheet: ReadSheet, outside: Outside): Package {
  return relationshipsOf(file, sheet.path)
    .filter(({ type }) => type === "table")
    .reduce(
      (changed, { target }) =>
        withChange(changed, target, (xml) => editTable(xml, target, sheet, outside)),
      file,
    );
}

function editTable(xml: string, path: string, sheet: ReadSheet, outside: Outside): string {
  const root = parseXml(xml, path);
  const area = parseArea(root.attributes.ref ?? "");
  if (!area) return xml;
  const name = root.attributes.displayName ?? root.attributes.name ?? "";
  const totals = numberOf(root, "totalsRowCount") ?? 0;
  const data = {
    startRow: area.startRow + (numberOf(root, "headerRowCount") ?? 1),
    endRow: area.endRow - totals,
  };
  const edits: Edit[] = [];
  const columns = childOf(root, "tableColumns")?.children ?? [];
  columns.forEach((column, at) => {
    const number = area.startColumn + at;
    const title = fromFileText(column.attributes.name ?? "");
    const range = (startRow: number, endRow: number) =>
      areaAddress({ startRow, endRow, startColumn: number, endColumn: number });
    edit(column, "calculatedColumnFormula", {
      place: range(data.startRow, Math.max(data.startRow, data.endRow)),
      of: `the column "${title}" of the table ${name}`,
    });
    const gone = edit(column, "totalsRowFormula", {
      place: range(area.endRow, area.endRow),
      of: `the total of "${title}" in the table ${name}`,
    });
    if (gone) edits.push(...withoutTotal(xml, column));
  });
  return applyEdits(xml, edits);

  /** Whether the formula is gone. */
  function edit(column: XmlElement, element: string, where: { place: string; of: string }) {
    const formula = childOf(column, element);
    const became = formula && settle(outside, { sheet: sheet.name, ...where }, formula.text);
    if (!became) return false;
    const { start, end } = formula;
    if ("lost" in became) edits.push({ start, end, text: "" });
    else edits.push({ ...inside(xml, formula), text: escapeXml(became.text) });
    return "lost" in became;
  }
}

/** A total without its formula is no total of the table's. */
function withoutTotal(xml: string, { start, contentStart }: XmlElement): Edit[] {
  const said = /\stotalsRowFunction\s*=\s*(?:"[^"]*"|'[^']*')/.exec(xml.slice(start, contentStart));
  if (!said) return [];
  const from = start + said.index;
  return [{ start: from, end: from + said[0].length, text: "" }];
}
