import type { ICellData, IResources, IWorkbookData } from "@univerjs/core";
import type { Spelling } from "../formula/spelling";
import { respell } from "../formula/spelling";

/** Respells the calls of our functions in all of a workbook: in its cells and behind its names. */
export function respellWorkbook(data: IWorkbookData, to: Spelling): IWorkbookData {
  const sheets = mapValues(data.sheets, (sheet) => ({
    ...sheet,
    cellData: mapValues(sheet.cellData ?? {}, (row) =>
      mapValues(row ?? {}, (cell) => respellCell(cell, to)),
    ),
  }));
  return { ...data, sheets, resources: respellNames(data.resources ?? [], to) };
}

function respellCell(cell: ICellData, to: Spelling): ICellData {
  return typeof cell?.f === "string" ? { ...cell, f: respell(cell.f, to) } : cell;
}

/** What a plugin of the spreadsheet keeps with a workbook is text; the names' plugin keeps JSON. */
function respellNames(resources: IResources, to: Spelling): IResources {
  return resources.map((resource) => {
    if (resource.name !== "SHEET_DEFINED_NAME_PLUGIN" || !resource.data) return resource;
    const names = JSON.parse(resource.data) as Record<string, { formulaOrRefString: string }>;
    const respelled = mapValues(names, (name) => ({
      ...name,
      formulaOrRefString: respell(name.formulaOrRefString, to),
    }));
    return { ...resource, data: JSON.stringify(respelled) };
  });
}

function mapValues<K extends string | number, V, W>(
  record: Readonly<Record<K, V>>,
  change: (value: V) => W,
): Record<K, W> {
  return Object.fromEntries(
    Object.entries(record).map(([key, value]) => [key, change(value as V)]),
  ) as Record<K, W>;
}
