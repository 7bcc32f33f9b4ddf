import type { Catalogue } from "../functions/catalogue";
import type { ReadySheet } from "../readySheets";

/** What the pane shows, in one file that the build writes and the page fetches. */
export interface PaneData {
  readonly catalogue: Catalogue;
  /** How people ask for a function in everyday words, by its id. */
  readonly phrases: Phrases;
  /** What people call the columns that an argument takes, by the argument's name. */
  readonly headings: Headings;
  /** What stands above a column of results, by the function's id; `{unit}` is its loads' unit. */
  readonly results: Readonly<Record<string, string>>;
  readonly cautions: readonly string[];
  readonly sheets: readonly SheetOffer[];
}

export type Phrases = Readonly<Record<string, readonly string[]>>;
export type Headings = Readonly<Record<string, readonly string[]>>;

/** A ready sheet and what it is for. */
export interface SheetOffer {
  readonly id: string;
  readonly title: string;
  readonly purpose: string;
  readonly sheet: ReadySheet;
}

/** Where the build puts it, beside the page. */
export const PANE_DATA = "pane.json";
