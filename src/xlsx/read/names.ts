import type { IResources } from "@univerjs/core";
import { fromFile } from "../../formula/future";
import type { Table } from "../../formula/tables";
import { resolveTables } from "../../formula/tables";
import { tokensOf } from "../../formula/tokens";
import type { DefinedName } from "../names";
import { namesResource, wholeWorkbook } from "../names";
import type { XmlElement } from "../package";
import { childrenOf, flagOf, numberOf } from "../package";
import type { ListedSheet } from "./sheets";

/** The names of a workbook; those that only say how to print it are left out. */
export function readNames(
  names: XmlElement | undefined,
  sheets: readonly ListedSheet[],
  tables: readonly Table[],
): IResources {
  const read: Record<string, DefinedName> = {};
  childrenOf(names, "definedName").forEach((element, index) => {
    const { name = "", comment } = element.attributes;
    if (name.startsWith("_xlnm.") || element.text === "") return;
    const position = numberOf(element, "localSheetId");
    const local = sheets.find((sheet) => sheet.position === position);
    if (position !== undefined && !local) return;
    const id = `name${index + 1}`;
    read[id] = {
      id,
      name,
      formulaOrRefString: readDefinition(element.text, tables),
      localSheetId: local?.id ?? wholeWorkbook,
      ...(flagOf(element, "hidden") && { hidden: true }),
      ...(comment && { comment }),
    };
  });
  return [{ name: namesResource, data: JSON.stringify(read) }];
}

const partsOfReference = ["sheet", "cell", "columns", "rows"];

/** The spreadsheet writes a formula with its "=" and a plain reference without. */
function readDefinition(text: string, tables: readonly Table[]): string {
  const formula = resolveTables(fromFile(text), tables, { sheet: "", row: 0, column: 0 });
  const isReference = tokensOf(formula).every(
    ({ kind, text: piece }) => partsOfReference.includes(kind) || ":,".includes(piece),
  );
  return isReference ? formula : `=${formula}`;
}
