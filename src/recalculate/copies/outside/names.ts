import {
  childOf,
  childrenOf,
  escapeXml,
  numberOf,
  parseXml,
  type Package,
} from "../../../xlsx/package";
import { withChange } from "../../../xlsx/patch/editPackage";
import { applyEdits, type Edit } from "../../../xlsx/patch/edits";
import { inside } from "./elements";
import { settle, type Outside } from "./place";

/** The workbook's names rewritten, or taken away; those that a formula in a cell still needs stay. */
export function editNames(file: Package, workbookPath: string, outside: Outside): Package {
  return withChange(file, workbookPath, (xml) => {
    const root = parseXml(xml, workbookPath);
    const sheets = childrenOf(childOf(root, "sheets"), "sheet");
    const list = childOf(root, "definedNames");
    const names = childrenOf(list, "definedName");
    const edits: Edit[] = [];
    let gone = 0;
    for (const element of names) {
      const { name = "" } = element.attributes;
      const sheet = sheets[numberOf(element, "localSheetId") ?? -1]?.attributes.name;
      if (outside.isKept(name.toLowerCase())) continue;
      const became = settle(outside, { sheet, place: name, of: "the name" }, element.text);
      if (!became) continue;
      if ("text" in became) {
        edits.push({ ...inside(xml, element), text: escapeXml(became.text) });
      } else {
        gone++;
        edits.push({ start: element.start, end: element.end, text: "" });
      }
    }
    if (list && gone > 0 && gone === names.length) {
      return xml.slice(0, list.start) + xml.slice(list.end);
    }
    return applyEdits(xml, edits);
  });
}
