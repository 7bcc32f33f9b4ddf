import type { IRange, IResources, IWorkbookData } from "@univerjs/core";
import type { FilterModel, SheetModel } from "../../xlsx/model";
import { COMPARISONS, isFiltered } from "../../xlsx/model";

/** Under this name the spreadsheet keeps the filters over a workbook's cells. */
const FILTERS_RESOURCE = "SHEET_FILTER_PLUGIN";

/** The filter of a sheet and the rows that it hides, as the spreadsheet keeps them. */
interface Kept {
  readonly ref: IRange;
  readonly filterColumns?: readonly KeptColumn[];
  readonly cachedFilteredOut?: readonly number[];
}

interface KeptColumn {
  /** The column's number in the sheet. */
  readonly colId: number;
  readonly filters?: { readonly filters?: readonly string[]; readonly blank?: true };
  readonly customFilters?: {
    readonly and?: 1;
    readonly customFilters: readonly {
      readonly val: string | number;
      readonly operator?: string;
    }[];
  };
  readonly colorFilters?: object;
}

/** A filter, and which rows it hides now. */
export interface OpenFilter {
  readonly filter: FilterModel;
  readonly hiddenRows: ReadonlySet<number>;
}

/** The filters of a workbook as the spreadsheet keeps them. */
export function filtersData(
  sheets: readonly SheetModel[],
  idOf: (position: number) => string,
): IResources[number] {
  const kept = sheets.flatMap(({ filter, rows }, position) => {
    if (!filter) return [];
    const hidden = rows.filter((row) => row.hidden && isFiltered(filter, row.row));
    const data: Kept = {
      ref: filter.area,
      filterColumns: filter.columns.map(columnData),
      ...(filter.columns.length > 0 && { cachedFilteredOut: hidden.map(({ row }) => row) }),
    };
    return [[idOf(position), data] as const];
  });
  return { name: FILTERS_RESOURCE, data: JSON.stringify(Object.fromEntries(kept)) };
}

function columnData({ column, texts, conditions }: FilterModel["columns"][number]): KeptColumn {
  return {
    colId: column,
    ...(texts && { filters: { filters: texts.shown, ...(texts.blank && { blank: true }) } }),
    ...(conditions && {
      customFilters: {
        ...(conditions.both && { and: 1 }),
        customFilters: conditions.list.map(({ is, than }) => ({
          val: than,
          ...(is !== "equal" && { operator: is }),
        })),
      },
    }),
  };
}

const keptIn = ({ resources }: Pick<IWorkbookData, "resources">) => {
  const data = resources?.find(({ name }) => name === FILTERS_RESOURCE)?.data;
  return data ? (JSON.parse(data) as Record<string, Kept>) : {};
};

/** The filters of an open workbook by the id of their sheet. What they ask of colours is left out. */
export function filtersOf(data: Pick<IWorkbookData, "resources">): Map<string, OpenFilter> {
  return new Map(
    Object.entries(keptIn(data)).map(
      ([id, { ref, filterColumns = [], cachedFilteredOut = [] }]) => {
        const { startRow, startColumn, endRow, endColumn } = ref;
        const columns = filterColumns.flatMap((column) => columnModel(column));
        const filter = { area: { startRow, startColumn, endRow, endColumn }, columns };
        return [id, { filter, hiddenRows: new Set(cachedFilteredOut) }];
      },
    ),
  );
}

function columnModel({ colId, filters, customFilters }: KeptColumn): FilterModel["columns"] {
  if (filters) {
    const texts = { shown: filters.filters ?? [], blank: filters.blank === true };
    return [{ column: colId, texts }];
  }
  if (!customFilters) return [];
  const list = customFilters.customFilters.map(({ val, operator }) => ({
    is: COMPARISONS.find((name) => name === operator) ?? "equal",
    than: String(val),
  }));
  return [{ column: colId, conditions: { both: customFilters.and === 1, list } }];
}

/** Whether a filter asks for a colour, which no file of ours holds. */
export const asksForColor = (data: Pick<IWorkbookData, "resources">): boolean =>
  Object.values(keptIn(data)).some(({ filterColumns }) =>
    filterColumns?.some(({ colorFilters }) => colorFilters !== undefined),
  );
