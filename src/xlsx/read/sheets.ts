import type { Package } from "../package";
import { attributeOf, childOf, childrenOf, findWorkbook, relationshipsOf, xmlAt } from "../package";

/** A worksheet as the workbook lists it. */
export interface ListedSheet {
  /** The id it has in the opened workbook. */
  readonly id: string;
  readonly name: string;
  /** The path of its part. */
  readonly path: string;
  readonly hidden: boolean;
  /** Its place among all of the file's sheets, by which names that belong to one sheet know it. */
  readonly position: number;
}

/** The worksheets of a file in their order; sheets that hold a chart and no cells are left out. */
export function listSheets(file: Package): ListedSheet[] {
  const workbookPath = findWorkbook(file);
  const related = relationshipsOf(file, workbookPath);
  const listed = childrenOf(childOf(xmlAt(file, workbookPath), "sheets"), "sheet");
  return listed.flatMap((sheet, position) => {
    const relationship = related.find(({ id }) => id === attributeOf(sheet, "id"));
    if (relationship?.type !== "worksheet") return [];
    return {
      id: `sheet${position + 1}`,
      name: sheet.attributes.name ?? `Sheet${position + 1}`,
      path: relationship.target,
      hidden: (sheet.attributes.state ?? "visible") !== "visible",
      position,
    };
  });
}
