/** What the pane fetches: the catalogue, how people ask for it, the cautions and the ready sheets. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { IWorkbookData } from "@univerjs/core";
import { readDemo } from "../readySheets";
import type { Headings, PaneData, Phrases, SheetOffer } from "../pane/data";
import type { ReadySheet, ReadyStyle } from "../pane/port";
import { readCatalogue } from "./catalogue";
import { ROOT } from "./paths";

const PANE = join(ROOT, "shared", "pane");
const read = (...path: string[]): unknown => JSON.parse(readFileSync(join(...path), "utf8"));

export function readPaneData(): PaneData {
  return {
    catalogue: readCatalogue(),
    phrases: read(PANE, "phrases.json") as Phrases,
    headings: read(PANE, "headings.json") as Headings,
    cautions: read(ROOT, "shared", "cautions.json") as string[],
    sheets: readOffers(),
  };
}

/** The ready sheets as a workbook of their own, in the order in which they are offered. */
export const readReadySheets = (): IWorkbookData => readDemo(PANE);

function readOffers(): SheetOffer[] {
  const workbook = readReadySheets();
  const about = read(PANE, "offers.json") as Record<string, Omit<SheetOffer, "id" | "sheet">>;
  return workbook.sheetOrder.map((id) => {
    if (!(id in about)) throw new Error(`offers.json does not say what the sheet "${id}" is for`);
    return { id, ...about[id], sheet: withStyles(workbook, id) };
  });
}

/** A sheet that stands alone: it brings those of its workbook's styles that it uses. */
function withStyles({ styles, sheets }: IWorkbookData, id: string): ReadySheet {
  // Its id is its name in this workbook; in another that could be some other sheet's.
  const sheet = { ...(sheets[id] as unknown as ReadySheet & { id?: string }) };
  delete sheet.id;
  const cells = Object.values(sheet.cellData).flatMap((row) => Object.values(row));
  const used = [...new Set(cells.flatMap(({ s }) => s ?? []))];
  return {
    ...sheet,
    styles: Object.fromEntries(used.map((name) => [name, styles[name] as ReadyStyle])),
  };
}
