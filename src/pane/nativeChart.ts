import { columnOf, referenceTo } from "./formula/reference";
import type { ChartColumn, NativeChart, Selection } from "./port";

/** How a picture looks as a chart of the spreadsheet's own, told by the headings of its columns. */
interface Recipe {
  readonly kind: NativeChart["kind"];
  readonly title: string;
  readonly horizontal: RegExp;
  readonly vertical: readonly RegExp[];
}

const RECIPES: Readonly<Record<string, Recipe>> = {
  "strength-trend": {
    kind: "line",
    title: "Strength trend",
    horizontal: /^date$/i,
    vertical: [/^one-rep max$/i, /^low$/i, /^high$/i],
  },
  "squad-rises": {
    kind: "columns",
    title: "Rise since the first day",
    horizontal: /^/,
    vertical: [/^rise$/i],
  },
  "athlete-changes": {
    kind: "columns",
    title: "Before and after",
    horizontal: /^(athlete|name|lifter|rower|player|who)\b/i,
    vertical: [/before|^pre\b/i, /after|^post\b/i],
  },
  "weekly-load": {
    kind: "columns",
    title: "Volume load",
    horizontal: /^/,
    vertical: [/^volume load/i],
  },
  "dose-response": {
    kind: "points",
    title: "Dose and response",
    horizontal: /^/,
    vertical: [/^effect/i],
  },
};

/** Why a picture is no chart of a spreadsheet's own, in a chart's own terms. */
export const NO_CHART: Readonly<Record<string, string>> = {
  "blocks-compared": "A spreadsheet's chart has no intervals from cells",
  "reserve-agreement": "A spreadsheet's chart has no lines of agreement",
  "group-changes": "A spreadsheet's chart does not work out two groups' changes",
  forest: "A spreadsheet's chart has no intervals from cells",
};

/**
 * The chart that shows a selection as the picture does, or nothing where a chart of the spreadsheet's
 * own cannot: the log of a trend has no estimates in it, and for the pictures of `NO_CHART` it has no means.
 */
export function nativeChartOf(
  picture: string,
  { sheet, address, values }: Selection,
): NativeChart | undefined {
  const recipe = RECIPES[picture];
  const headings = (values[0] ?? []).map((heading) => String(heading ?? "").trim());
  if (recipe === undefined || values.length < 3) return undefined;
  const column = (index: number): ChartColumn | undefined => {
    const name = headings[index];
    return name === undefined
      ? undefined
      : { name, cells: referenceTo(sheet, columnOf(address, index)) };
  };
  const place = headings.findIndex((heading) => recipe.horizontal.test(heading));
  const across = column(place);
  const [first, ...more] = recipe.vertical.flatMap(
    (wanted) =>
      column(headings.findIndex((heading, index) => index !== place && wanted.test(heading))) ?? [],
  );
  if (!across || !first || more.length < recipe.vertical.length - 1) return undefined;
  return { kind: recipe.kind, title: recipe.title, across, up: [first, ...more] };
}
