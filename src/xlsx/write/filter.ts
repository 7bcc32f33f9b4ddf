import { areaAddress, quoteSheet } from "../../formula/address";
import type { FilterColumn, FilterModel, NameModel, SheetModel } from "../model";
import { writeXml } from "../package";
import { toFileText } from "../strings";

/** Writes a sheet's filter; nothing where it has none. */
export function writeFilter(filter: FilterModel | undefined): string {
  if (!filter) return "";
  const { area, columns } = filter;
  return writeXml(
    "autoFilter",
    { ref: areaAddress(area) },
    columns.map((each) =>
      writeXml("filterColumn", { colId: each.column - area.startColumn }, writeAsked(each)),
    ),
  );
}

function writeAsked({ texts, conditions }: FilterColumn): string {
  if (texts) {
    const shown = texts.shown.map((text) => writeXml("filter", { val: toFileText(text) }));
    return writeXml("filters", { blank: texts.blank ? 1 : undefined }, shown);
  }
  if (!conditions) return "";
  const list = conditions.list.map(({ is, than }) =>
    writeXml("customFilter", {
      operator: is === "equal" ? undefined : is,
      val: toFileText(than),
    }),
  );
  return writeXml("customFilters", { and: conditions.both ? 1 : undefined }, list);
}

/** The hidden names by which Excel knows the ranges that are filtered. */
export function filterNames(sheets: readonly SheetModel[]): NameModel[] {
  return sheets.flatMap(({ name, filter }) => {
    if (!filter) return [];
    const [from, to = from] = areaAddress(filter.area)
      .split(":")
      .map((cell) => cell.replace(/([A-Z]+)(\d+)/, "$$$1$$$2"));
    const text = `${quoteSheet(name)}!${from}:${to}`;
    return { name: "_xlnm._FilterDatabase", text, sheet: name, hidden: true };
  });
}
