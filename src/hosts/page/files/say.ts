import type { KeptCell } from "../../../engine/keptFormulas";

/** How many cells a message names before it only counts. */
const NAMED = 5;

/** What a copy lacks: " A copy saved here will not have its charts and filters." */
export function saidOfLosses(lead: string, losses: readonly string[]): string {
  return losses.length === 0 ? "" : ` ${lead} ${inWords([...new Set(losses)])}.`;
}

/** Which formulas are not computed here: " Log!B3 and Log!C4 keep the file's values: …". */
export function saidOfKept(kept: readonly KeptCell[]): string {
  if (kept.length === 0) return "";
  const cells = kept.slice(0, NAMED).map(({ sheet, address }) => `${sheet}!${address}`);
  const more = kept.length > NAMED ? [`${kept.length - NAMED} more cells`] : [];
  const [keeps, value, formula] =
    kept.length === 1
      ? ["keeps", "value", "its formula is"]
      : ["keep", "values", "their formulas are"];
  return ` ${inWords([...cells, ...more])} ${keeps} the file's ${value}: ${formula} not computed here.`;
}

function inWords(items: readonly string[]): string {
  const last = items.at(-1)!;
  return items.length === 1 ? last : `${items.slice(0, -1).join(", ")} and ${last}`;
}
