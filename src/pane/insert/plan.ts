import { onlyCell } from "../../cells";
import type { PaneContext } from "../view/context";
import { formulaOf, type Call } from "../formula/call";
import { areaOf, referenceTo } from "../formula/reference";
import type { Worked } from "../formula/work";
import type { Target } from "../port";
import type { Rows } from "./besideRows";
import { headingsFor, partsOf, unitIn } from "./heading";
import { lookOf } from "./look";
import { columnInsertion, tableInsertion, type Insertion } from "./insertion";
import { besideSpot, spotAddress, tableSpot, type Spot } from "./place";

/** What pressing the button would do, in words, or why it does nothing. */
export type Plan =
  | {
      readonly says: string;
      readonly button: string;
      readonly insertion: Insertion;
      /** Whether the selected cell holds something that it would replace. */
      readonly covers?: true;
    }
  | { readonly refused: string };

interface Context extends Pick<PaneContext, "data"> {
  /** What is asked of the sheets. */
  readonly port: Pick<PaneContext["port"], "readRange" | "firstFilled">;
}

/** Where a worked call goes, with its headings and formats. */
export async function planInsertion(
  call: Call,
  worked: Worked,
  target: Target,
  context: Context,
): Promise<Plan> {
  if (worked.kind !== "result") return intoOneCell(call, undefined, target, context);
  const { grid, beside } = worked;
  if (beside && "apart" in beside) {
    return {
      refused: `${beside.apart.join(" and ")} start in different rows: no result would stand beside its own row.`,
    };
  }
  if (beside && goesBeside(beside, target))
    return besideItsRows(call, grid, beside, target, context);
  const content = onlyCell(grid);
  return content === undefined
    ? asTable(call, grid, target, context)
    : intoOneCell(call, content, target, context);
}

/** A single row's result may go anywhere, but not level with the headings. */
function goesBeside({ count, first }: Rows, { address }: Target): boolean {
  return count > 1 || Number(/\d+$/.exec(address)?.[0]) === first;
}

/** One value, or one that only the sheet can work out: into the selected cell. */
function intoOneCell(
  call: Call,
  content: Grid[number][number] | undefined,
  { sheet, address, filled }: Target,
  { data }: Pick<Context, "data">,
): Plan {
  // What stands there already keeps the format that somebody gave it.
  const isNew = content !== undefined && !filled;
  const [label = ""] = headingsFor(call.entry, partOf(call), 1, data.results, data.catalogue.enums);
  const { format } = lookOf(label, isNew ? [content] : []);
  const insertion: Insertion = {
    sheet,
    address,
    formula: formulaOf(call, sheet),
    headings: [],
    formats: format === undefined ? [] : [{ address, format }],
    widths: {},
  };
  const where = referenceTo(sheet, address);
  return filled
    ? {
        says: `${where} holds something, which the formula would replace.`,
        button: `Replace ${address}`,
        insertion,
        covers: true,
      }
    : { says: `The formula goes into ${where}.`, button: `Insert in ${address}`, insertion };
}

type Grid = Extract<Worked, { kind: "result" }>["grid"];

async function besideItsRows(
  call: Call,
  grid: Grid,
  rows: Rows,
  target: Target,
  { port, data }: Context,
): Promise<Plan> {
  const columns = grid[0]?.length ?? 1;
  const spot = await besideSpot(rows, columns, target, port);
  if (typeof spot === "string") return { refused: spot };
  const { enums } = data.catalogue;
  const unit = unitIn(await headingsAbove(call, rows, port));
  const labels = headingsFor(call.entry, partOf(call), columns, data.results, enums, unit);
  const insertion = columnInsertion(spot, formulaOf(call, spot.sheet), grid, labels);
  const { headings } = insertion;
  const under =
    headings.length > 0 ? `, under ${headings.map(({ text }) => `“${text}”`).join(", ")}` : "";
  return {
    says: `${spot.why}Each result goes beside its own row, in ${spotAddress(spot)}${under}.`,
    button: `Insert in ${insertion.address}`,
    insertion,
  };
}

/** The one value that the call asks for, if it asks for one. */
function partOf({ entry, args }: Call): string | undefined {
  const asked = args[entry.parameters.findIndex(({ name }) => name === "part")];
  return asked?.kind === "value" ? String(asked.value) : undefined;
}

/** What stands above the columns the call reads. */
async function headingsAbove(
  { args }: Call,
  { first }: Rows,
  port: Context["port"],
): Promise<string[]> {
  if (first === 0) return [];
  const texts: string[] = [];
  for (const argument of args) {
    const area = argument.kind === "cells" ? areaOf(argument.reference) : undefined;
    if (argument.kind !== "cells" || area?.startRow !== first) continue;
    const above = argument.reference.replaceAll(/(?<=[A-Z]\$?)\d+/gi, String(first));
    texts.push(String((await port.readRange(above))[0]?.[0] ?? ""));
  }
  return texts;
}

async function asTable(
  call: Call,
  grid: Grid,
  target: Target,
  { port, data }: Context,
): Promise<Plan> {
  const spot = await tableSpot(grid, target, port);
  if (typeof spot === "string") return { refused: spot };
  const parts = partsOf(call.entry, data.catalogue.enums);
  const insertion = tableInsertion(spot, formulaOf(call, spot.sheet), grid, parts);
  return {
    says: `${spot.why}The table goes into ${whole(spot)}.`,
    button: `Insert in ${insertion.address}`,
    insertion,
  };
}

const whole = (spot: Spot) => referenceTo(spot.sheet, spotAddress(spot));
