import { parseArea } from "../../formula/address";
import type { Comparison, FilterColumn, FilterCondition, FilterModel } from "../model";
import { COMPARISONS } from "../model";
import type { XmlElement } from "../package";
import { childOf, childrenOf, flagOf, numberOf } from "../package";
import { fromFileText } from "../strings";

/**
 * The filter over a sheet's cells. One that asks for more than texts and COMPARISONS, such as a colour,
 * is no filter here: the rows that it hides stay hidden.
 */
export function readFilter(element: XmlElement | undefined): FilterModel | undefined {
  const area = parseArea(element?.attributes.ref ?? "");
  if (!area) return undefined;
  const asking = childrenOf(element, "filterColumn").filter(({ children }) => children.length > 0);
  const columns = asking.map((column) => readColumn(column, area.startColumn));
  const known = columns.filter((column) => column !== undefined);
  return known.length === columns.length ? { area, columns: known } : undefined;
}

function readColumn(element: XmlElement, first: number): FilterColumn | undefined {
  const column = first + (numberOf(element, "colId") ?? 0);
  const [asked] = element.children;
  if (asked?.name === "filters" && asked.children.every(({ name }) => name === "filter")) {
    const shown = asked.children.map(({ attributes }) => fromFileText(attributes.val ?? ""));
    return { column, texts: { shown, blank: flagOf(asked, "blank") } };
  }
  const conditions = childrenOf(childOf(element, "customFilters"), "customFilter");
  if (asked?.name !== "customFilters" || conditions.length === 0) return undefined;
  return {
    column,
    conditions: { both: flagOf(asked, "and"), list: conditions.map(readCondition) },
  };
}

function readCondition({ attributes: { operator, val } }: XmlElement): FilterCondition {
  const is = COMPARISONS.find((name): name is Comparison => name === operator);
  return { is: is ?? "equal", than: fromFileText(val ?? "") };
}
