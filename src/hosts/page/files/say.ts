import type { KeptCell } from "../../../engine/keptFormulas";
import type { Circles } from "./xlsxFiles";

/** How many cells a message names before it only counts. */
const NAMED = 5;

/** What a copy lacks: " A copy saved here will not have its charts and filters." */
export function saidOfLosses(lead: string, losses: readonly string[]): string {
  return losses.length === 0 ? "" : ` ${lead} ${inWords([...new Set(losses)])}.`;
}

/** Which formulas are not computed here: " Log!B3 and Log!C4 keep the file's values: …". */
export function saidOfKept(kept: readonly KeptCell[]): string {
  if (kept.length === 0) return "";
  const cells = kept.map(({ sheet, address }) => `${sheet}!${address}`);
  const [keeps, value, formula] =
    kept.length === 1
      ? ["keeps", "value", "its formula is"]
      : ["keep", "values", "their formulas are"];
  return ` ${inWords(upTo(NAMED, cells))} ${keeps} the file's ${value}: ${formula} not computed here.`;
}

/** Which cells and names read their own result. */
export function saidOfCircles({ cells, names }: Circles): string {
  const places = cells.map(({ sheet, address }) => `${sheet}!${address}`);
  const ofCells = `${inWords(upTo(NAMED, places))} ${cells.length === 1 ? "reads its own result" : "read their own results"}`;
  const ofNames = `the ${names.length === 1 ? "name" : "names"} ${inWords(names)} ${names.length === 1 ? "stands for itself" : "stand for themselves"}`;
  const said = [...(cells.length > 0 ? [ofCells] : []), ...(names.length > 0 ? [ofNames] : [])];
  if (said.length === 0) return "";
  return ` A circle has no right result: ${said.join(", and ")}. Everything else is computed.`;
}

function upTo(most: number, items: readonly string[]): readonly string[] {
  return items.length > most
    ? [...items.slice(0, most), `${items.length - most} more cells`]
    : items;
}

function inWords(items: readonly string[]): string {
  const last = items.at(-1)!;
  return items.length === 1 ? last : `${items.slice(0, -1).join(", ")} and ${last}`;
}
