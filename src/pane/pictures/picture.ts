import { CellError } from "../../cells";
import type { Telling } from "../formula/mixed";
import type { TrendSettings } from "./settings";

/** A picture drawn from cells: what to select for it, how they are read, how it looks, and what it says. */
export interface Picture<Data = unknown> {
  readonly id: string;
  readonly title: string;
  /** What to select, in plain words. */
  readonly describe: string;
  /** What these rows must have in common, since the picture would mix them: a lifter, a lift. */
  isOfOne?(values: Cells): readonly Telling[];
  /** Whether it judges a log, as the settings of a trend say. */
  readonly hasSettings?: true;
  /** Reads a selection's cells, a log as the settings say; what cannot be drawn says why. */
  read(values: Cells, settings?: TrendSettings): Data | Problem;
  draw(data: Data, options: DrawOptions): SVGSVGElement;
  /** What the picture shows, in words, for those who do not see it. */
  alt(data: Data): string;
}

/** Rows of cells as a host gives them. */
export type Cells = readonly (readonly unknown[])[];

export interface DrawOptions {
  /** In pixels: 280 to 320 in a pane, about 720 for a sheet or a page. */
  readonly width: number;
  /** The unit of the numbers, such as "kg", where the headings do not tell it. */
  readonly units?: string;
  /** For a dark page. A picture for a sheet stays light. */
  readonly dark?: boolean;
  /** The page's document, which makes the elements. */
  readonly document: Document;
}

/** Why a selection gives no picture: what was found, and what was expected. */
export interface Problem {
  readonly problem: string;
}

export const isProblem = (read: unknown): read is Problem =>
  typeof read === "object" && read !== null && "problem" in read;

/** Thrown while reading a selection that gives no picture. */
export class Unreadable extends Error {}

/** Reads, and turns what goes wrong with the cells into a message. */
export function reading<Data>(read: () => Data): Data | Problem {
  try {
    return read();
  } catch (trouble) {
    if (trouble instanceof Unreadable || trouble instanceof CellError) {
      return { problem: trouble.message };
    }
    throw trouble;
  }
}
