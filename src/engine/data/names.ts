import type { IResources, IWorkbookData } from "@univerjs/core";
import { fromFile, toFile } from "../../formula/future";
import { resolveTables } from "../../formula/tables";
import { tokensOf } from "../../formula/tokens";
import type { NameModel, WorkbookModel } from "../../xlsx/model";

/** Under this name the spreadsheet keeps a workbook's defined names. */
export const NAMES_RESOURCE = "SHEET_DEFINED_NAME_PLUGIN";

/** What stands for the whole workbook where a name could belong to one sheet. */
const WHOLE_WORKBOOK = "AllDefaultWorkbook";

/** A name that stands for a range, a value or a formula, as the spreadsheet keeps it. */
interface NameData {
  readonly id: string;
  readonly name: string;
  readonly formulaOrRefString: string;
  readonly localSheetId?: string;
  readonly hidden?: boolean;
  readonly comment?: string;
}

/** The names of a workbook as the spreadsheet keeps them; those that only say how to print are left out. */
export function namesData(
  { names, tables, sheets }: Pick<WorkbookModel, "names" | "tables" | "sheets">,
  idOf: (position: number) => string,
): IResources[number] {
  const data: Record<string, NameData> = {};
  names.forEach(({ name, text, sheet, hidden, comment }, index) => {
    if (name.startsWith("_xlnm.") || text === "") return;
    const local = sheets.findIndex((each) => each.name === sheet);
    if (sheet !== undefined && local < 0) return;
    const id = `name${index + 1}`;
    data[id] = {
      id,
      name,
      formulaOrRefString: definitionData(text, tables),
      localSheetId: sheet === undefined ? WHOLE_WORKBOOK : idOf(local),
      ...(hidden && { hidden }),
      ...(comment && { comment }),
    };
  });
  return { name: NAMES_RESOURCE, data: JSON.stringify(data) };
}

const PARTS_OF_REFERENCE = ["sheet", "cell", "columns", "rows"];

/** The spreadsheet writes a formula with its "=" and a plain reference without. */
function definitionData(text: string, tables: WorkbookModel["tables"]): string {
  const formula = resolveTables(fromFile(text), tables, { sheet: "", row: 0, column: 0 });
  const isReference = tokensOf(formula).every(
    ({ kind, text: piece }) => PARTS_OF_REFERENCE.includes(kind) || ":,".includes(piece),
  );
  return isReference ? formula : `=${formula}`;
}

/** The names of a workbook that the spreadsheet keeps. */
export function namesModel({ resources, sheets }: IWorkbookData): NameModel[] {
  const data = resources?.find(({ name }) => name === NAMES_RESOURCE)?.data;
  const kept = data ? Object.values(JSON.parse(data) as Record<string, NameData>) : [];
  return kept.flatMap(({ name, formulaOrRefString, localSheetId, hidden, comment }) => {
    const everywhere = localSheetId === undefined || localSheetId === WHOLE_WORKBOOK;
    const sheet = everywhere ? undefined : sheets[localSheetId]?.name;
    if (!everywhere && sheet === undefined) return [];
    return {
      name,
      text: toFile(formulaOrRefString.replace(/^=/, "")),
      ...(sheet !== undefined && { sheet }),
      ...(hidden && { hidden }),
      ...(comment && { comment }),
    };
  });
}
