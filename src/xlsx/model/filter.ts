import type { Area } from "../../formula/address";

/** A filter over a range whose first row is its head: a row is shown where every column lets it through. */
export interface FilterModel {
  readonly area: Area;
  readonly columns: readonly FilterColumn[];
}

/** What one column lets through: some of the texts it shows, or what meets a condition or two. */
export interface FilterColumn {
  /** Its number in the sheet. */
  readonly column: number;
  readonly texts?: { readonly shown: readonly string[]; readonly blank: boolean };
  readonly conditions?: {
    /** Whether both are to be met, not just one. */
    readonly both: boolean;
    readonly list: readonly FilterCondition[];
  };
}

export interface FilterCondition {
  readonly is: Comparison;
  /** A number, or a text in which "*" and "?" stand for others. */
  readonly than: string;
}

/** Comparisons by their names in a file. */
export const COMPARISONS = [
  "equal",
  "notEqual",
  "greaterThan",
  "greaterThanOrEqual",
  "lessThan",
  "lessThanOrEqual",
] as const;

export type Comparison = (typeof COMPARISONS)[number];

/** Whether a row is the filter's to show or to hide. */
export const isFiltered = ({ area, columns }: FilterModel, row: number): boolean =>
  columns.length > 0 && row > area.startRow && row <= area.endRow;
