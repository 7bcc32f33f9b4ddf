import { shortened } from "../../cells/text";
import { LIMITS } from "../limits";
import type { Package } from "../package";
import {
  attributeOf,
  childOf,
  childrenOf,
  findWorkbook,
  numberOf,
  relationshipsOf,
  UnreadableFile,
  xmlAt,
} from "../package";

/** A worksheet as the workbook lists it. */
export interface ListedSheet {
  readonly name: string;
  /** The path of its part. */
  readonly path: string;
  readonly hidden: boolean;
  /** Its place among all of the file's sheets, by which names that belong to one sheet know it. */
  readonly position: number;
  /** The number by which other parts of the file know it. */
  readonly number: number;
}

/** The worksheets of a file in their order; sheets that hold a chart and no cells are left out. */
export function listSheets(file: Package): ListedSheet[] {
  const workbookPath = findWorkbook(file);
  const related = relationshipsOf(file, workbookPath);
  const listed = childrenOf(childOf(xmlAt(file, workbookPath), "sheets"), "sheet");
  if (listed.length > LIMITS.sheets) {
    throw new UnreadableFile(
      `the workbook has ${listed.length} sheets; at most ${LIMITS.sheets} can be read`,
    );
  }
  const names = new Set<string>();
  const paths = new Set<string>();
  return listed.flatMap((sheet, position) => {
    const name = sheet.attributes.name ?? `Sheet${position + 1}`;
    if (name.length > LIMITS.sheetName) {
      throw new UnreadableFile(
        `the sheet ${shortened(name)} has a name of ${name.length} characters`,
      );
    }
    if (names.has(name.toLowerCase())) {
      throw new UnreadableFile(`the file is damaged: two sheets are called "${name}"`);
    }
    names.add(name.toLowerCase());
    const relationship = related.find(({ id }) => id === attributeOf(sheet, "id"));
    if (!relationship) {
      throw new UnreadableFile(`the file is damaged: the sheet "${name}" is missing`);
    }
    if (relationship.type !== "worksheet") return [];
    if (paths.has(relationship.target)) {
      throw new UnreadableFile(`the file is damaged: the sheet "${name}" is another one as well`);
    }
    paths.add(relationship.target);
    return {
      name,
      path: relationship.target,
      hidden: (sheet.attributes.state ?? "visible") !== "visible",
      position,
      number: numberOf(sheet, "sheetId") ?? 0,
    };
  });
}
