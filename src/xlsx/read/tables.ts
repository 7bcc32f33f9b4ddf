import { parseArea } from "../../formula/address";
import type { Table } from "../../formula/tables";
import type { Package } from "../package";
import { childOf, numberOf, relationshipsOf, xmlAt } from "../package";
import { fromFileText } from "../strings";
import type { ListedSheet } from "./sheets";

/** All the tables of a workbook. */
export function readTables(file: Package, sheets: readonly ListedSheet[]): Table[] {
  return sheets.flatMap((sheet) =>
    relationshipsOf(file, sheet.path)
      .filter(({ type }) => type === "table")
      .flatMap(({ target }) => readTable(file, target, sheet.name)),
  );
}

function readTable(file: Package, path: string, sheet: string): Table[] {
  const table = xmlAt(file, path);
  const area = parseArea(table.attributes.ref ?? "");
  if (!area) return [];
  const columns = childOf(table, "tableColumns")?.children ?? [];
  return [
    {
      name: table.attributes.displayName ?? table.attributes.name ?? "",
      sheet,
      area,
      columns: columns.map(({ attributes }) => fromFileText(attributes.name ?? "")),
      headerRows: numberOf(table, "headerRowCount") ?? 1,
      totalsRows: numberOf(table, "totalsRowCount") ?? 0,
    },
  ];
}
