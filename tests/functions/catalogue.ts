import { readCatalogue } from "../../src/tools/catalogue";
import type { CatalogueFunction, Parameter } from "../../src/functions/catalogue";
import { CellError, type Content, type Grid } from "../../src/cells";
import { implementations, type Implementation } from "../../src/functions/implementations";
import { cellAt, named, only } from "../present";

export const catalogue = readCatalogue();

/** Every function there is, so that a new one is tested without a word about it here. */
export const functions = catalogue.functions;

/** Calls a function as a host does. */
export const call = (id: string, ...args: unknown[]): Grid =>
  named<Implementation>(implementations, id)(...args);

/** The one content of a result of one cell. */
export const value = (id: string, ...args: unknown[]): Content => only(only(call(id, ...args)));

/** A content as one text, an error with its message; "undefined" where there is no such cell. */
export const shown = (content: Content | undefined) =>
  content instanceof CellError ? `${content.code} ${content.message}` : String(content);

/** What the first cell of a result shows, which is the message where there is no result. */
export const messageOf = (result: Grid) => shown(cellAt(result, 0, 0));

/** A whole result as text, cell by cell, so that two can be compared with their messages. */
export const shownGrid = (grid: Grid) => grid.map((row) => row.map(shown));

/** The words a parameter may be, where it is a choice. */
export const wordsOf = ({ customEnumId }: Parameter): readonly string[] =>
  catalogue.enums
    .find(({ id }) => id === customEnumId)
    ?.values.map(({ stringValue }) => stringValue) ?? [];

/** Whether the function gives the values of a report or a table one by one. */
export const hasPart = ({ parameters }: CatalogueFunction) =>
  parameters.at(-1)?.name === "part" && wordsOf(parameters.at(-1)!).length > 0;
