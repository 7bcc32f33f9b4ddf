import type { Contents, SheetFile } from "./format";
import type { OwnList, ReadySheet } from "./ready";

/** A gap in a formula: "{load}" stands for the loads' column, wherever the list stands. */
const GAP = /\{([a-z]+)\}/g;

/** The formula with its gaps filled; a gap nobody fills stays. */
export const fillGaps = (formula: string, columns: Readonly<Record<string, string>>): string =>
  formula.replace(GAP, (gap, name: string) => columns[name] ?? gap);

/** The sheet as it reads a list of the workbook's own, by the columns' addresses. */
export function reading({ sheet }: OwnList, columns: Readonly<Record<string, string>>): ReadySheet {
  return {
    ...sheet,
    cells: mapValues(sheet.cells, (row) =>
      mapValues(row, (cell) =>
        cell.formula === undefined ? cell : { ...cell, formula: fillGaps(cell.formula, columns) },
      ),
    ),
  };
}

const mapValues = <T>(record: Readonly<Record<number, T>>, change: (one: T) => T) =>
  Object.fromEntries(Object.entries(record).map(([key, one]) => [key, change(one)])) as Record<
    number,
    T
  >;

/** A sheet's file as it reads the list that the file itself names, the invented one laid under it. */
export function withItsList({ reads, invented, ...sheet }: SheetFile): SheetFile {
  const filled = (text: unknown): unknown =>
    Array.isArray(text)
      ? text.map(filled)
      : typeof text === "string" && text.startsWith("=")
        ? fillGaps(text, reads?.columns ?? {})
        : text;
  const file = onTop({ name: sheet.name, ...invented }, sheet);
  return {
    ...file,
    cells: Object.fromEntries(
      Object.entries(file.cells ?? {}).map(([address, content]) => [address, filled(content)]),
    ) as Contents["cells"] & object,
    fill: Object.fromEntries(
      Object.entries(file.fill ?? {}).map(([address, formula]) => [
        address,
        fillGaps(formula, reads?.columns ?? {}),
      ]),
    ),
  };
}

/** One sheet's file on top of another: what both say is as the upper says. A list of its own takes the other's place. */
export function onTop(under: SheetFile, upper: Partial<SheetFile>): SheetFile {
  const invented =
    upper.reads === undefined && under.invented && upper.invented
      ? contentsOnTop(under.invented, upper.invented)
      : (upper.invented ?? under.invented);
  return {
    ...under,
    ...upper,
    ...contentsOnTop(under, upper),
    ...(invented && { invented }),
  };
}

function contentsOnTop(under: Contents, upper: Contents): Contents {
  const both = <K extends keyof Contents>(part: K) => ({ ...under[part], ...upper[part] });
  return {
    widths: both("widths"),
    heights: both("heights"),
    style: both("style"),
    cells: both("cells"),
    csv: both("csv"),
    fill: both("fill"),
    merge: [...(under.merge ?? []), ...(upper.merge ?? [])],
  };
}
