import { cellAddress, type Area } from "../../formula/address";
import {
  attributeOf,
  numberOf,
  parseXml,
  relationshipsOf,
  relationshipsPath,
  textAt,
  partAt,
  type Package,
} from "../package";
import { withChange, withoutPart, withText } from "./editPackage";
import { applyEdits, type Edit } from "./edits";

/**
 * The package with its order of calculation put right. That part lists the cells with formulas; one
 * that has none any more would be damage to Excel, while one too few is none. Where nothing is
 * wrong, the part stays as it is.
 */
export function pruneCalcChain(
  file: Package,
  workbookPath: string,
  hasFormula: (sheetId: number, address: string) => boolean,
): Package {
  const path = relationshipsOf(file, workbookPath).find(({ type }) => type === "calcChain")?.target;
  if (path === undefined || !partAt(file, path)) return file;
  const xml = textAt(file, path);
  const entries = parseXml(xml, path).children.filter(({ name }) => name === "c");
  const edits: Edit[] = [];
  let sheet = 0;
  let keptSheet = 0;
  let kept = 0;
  for (const entry of entries) {
    // An entry on the same sheet as the one before does not say so.
    const said = numberOf(entry, "i");
    sheet = said ?? sheet;
    const { start, end } = entry;
    if (!hasFormula(sheet, attributeOf(entry, "r") ?? "")) {
      edits.push({ start, end, text: "" });
      continue;
    }
    kept++;
    if (said === undefined && sheet !== keptSheet) {
      edits.push({ start, end, text: xml.slice(start, end).replace(/\s*\/?>/, ` i="${sheet}"$&`) });
    }
    keptSheet = sheet;
  }
  if (edits.length === 0) return file;
  return kept > 0
    ? withText(file, path, applyEdits(xml, edits))
    : without(file, workbookPath, path);
}

/** The list may not be empty, but it may be missing. */
function without(file: Package, workbookPath: string, path: string): Package {
  const name = path.slice(path.lastIndexOf("/") + 1);
  const entry = (element: string, attribute: string, value: string) =>
    new RegExp(`<(?:[\\w.-]+:)?${element}\\b[^>]*\\b${attribute}="[^"]*${value}"[^>]*/>`, "i");
  const escaped = name.replaceAll(".", "\\.");
  const unlisted = withChange(withoutPart(file, path), "[Content_Types].xml", (xml) =>
    xml.replace(entry("Override", "PartName", escaped), ""),
  );
  return withChange(unlisted, relationshipsPath(workbookPath), (xml) =>
    xml.replace(entry("Relationship", "Target", escaped), ""),
  );
}

/** The cells that a formula fills, on the sheet of this number. */
export interface FilledCells {
  readonly sheetId: number;
  readonly area: Area;
}

/** Whether a cell holds one of these formulas or lies in its array. */
export function filledBy(formulas: Iterable<FilledCells>) {
  const cells = new Map<number, Set<string>>();
  for (const { sheetId, area } of formulas) {
    const ofSheet = cells.get(sheetId) ?? new Set<string>();
    cells.set(sheetId, ofSheet);
    for (let row = area.startRow; row <= area.endRow; row++) {
      for (let column = area.startColumn; column <= area.endColumn; column++) {
        ofSheet.add(cellAddress(row, column));
      }
    }
  }
  return (sheetId: number, address: string) => cells.get(sheetId)?.has(address) ?? false;
}
