import type { CatalogueFunction, CustomEnum } from "../../functions/catalogue";

/**
 * What stands above the columns of a result that goes row by row: the labels of its parts, where it has several; else
 * what the function's result is called, with the unit that the heading of its loads says ("Load, kg").
 */
export function headingsFor(
  entry: CatalogueFunction,
  part: string | undefined,
  columns: number,
  names: Readonly<Record<string, string>>,
  enums: readonly CustomEnum[],
  unit?: string,
): string[] {
  const parts = partsOf(entry, enums);
  if (part !== undefined && parts.includes(part)) return [part];
  if (columns > 1 && parts.length === columns) return parts;
  const name = names[entry.id];
  if (name === undefined || columns > 1) return [];
  return [name.includes("{unit}") ? withUnit(name, unit) : name];
}

const withUnit = (name: string, unit: string | undefined) =>
  name.replace("{unit}", unit === undefined ? "" : `, ${unit}`);

/** The labels of the values a function gives, one by one. */
export function partsOf(entry: CatalogueFunction, enums: readonly CustomEnum[]): string[] {
  const parameter = entry.parameters.find(({ name }) => name === "part");
  const choices = enums.find(({ id }) => id === parameter?.customEnumId);
  return choices?.values.map(({ stringValue }) => stringValue) ?? [];
}

/** The unit a heading says: "Load (kg)", "weight, lb". */
export function unitIn(headings: readonly string[]): string | undefined {
  for (const heading of headings) {
    const [, unit] = /(?:^|[\s(,])(kg|kgs|kilos|lb|lbs|pounds)\b/i.exec(heading) ?? [];
    if (unit !== undefined) return /^k/i.test(unit) ? "kg" : "lb";
  }
  return undefined;
}
