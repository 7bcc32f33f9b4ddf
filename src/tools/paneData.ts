/** What the pane fetches: the catalogue, how people ask for it, the cautions and the ready sheets. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Headings, PaneData, Phrases, SheetOffer } from "../pane/data";
import { readSheets, type ReadyWorkbook } from "../readySheets";
import { readCatalogue } from "./catalogue";
import { ROOT } from "./paths";

const PANE = join(ROOT, "shared", "pane");
const read = (...path: string[]): unknown => JSON.parse(readFileSync(join(...path), "utf8"));

export function readPaneData(): PaneData {
  return {
    catalogue: readCatalogue(),
    phrases: read(PANE, "phrases.json") as Phrases,
    headings: read(PANE, "headings.json") as Headings,
    results: read(PANE, "results.json") as PaneData["results"],
    cautions: read(ROOT, "shared", "cautions.json") as string[],
    sheets: readOffers(),
  };
}

/** The sheets that the pane offers, in the order in which it offers them. */
export const readReadySheets = (): ReadyWorkbook => readSheets(PANE);

function readOffers(): SheetOffer[] {
  const about = read(PANE, "offers.json") as Record<string, Omit<SheetOffer, "id" | "sheet">>;
  return readReadySheets().sheets.map(([id, sheet]) => {
    const offer = about[id];
    if (!offer) throw new Error(`offers.json does not say what the sheet "${id}" is for`);
    return { id, ...offer, sheet };
  });
}
