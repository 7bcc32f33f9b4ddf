/**
 * Reading and writing files is a bundle of its own, which the page fetches when it is first asked to
 * open or save one.
 */
import type { IWorkbookData } from "@univerjs/core";
import { workbookData, workbookModel } from "../../../engine/data";
import { asksForColor } from "../../../engine/data/filters";
import { keepFormulas, restoreFormulas, type KeptCell } from "../../../engine/keptFormulas";
import { knownFunctions } from "../../../engine/known";
import { cellAddress } from "../../../formula/address";
import { circularNames } from "../../../formula/circularNames";
import { bookOf } from "../../../recalculate/book";
import { findCircles } from "../../../recalculate/reach/circles";
import { readsFinder } from "../../../recalculate/reach/reads";
import type { ReadWorkbook } from "../../../xlsx";
import { lossesOf, readPackage, readWorkbook, writeWorkbook } from "../../../xlsx";
import { withoutBrokenPictures } from "./brokenPictures";
import type { PageWorkbook } from "../spreadsheet";

/** A file read, and what of it a copy saved here would not have. */
export interface ReadFile {
  readonly data: IWorkbookData;
  readonly losses: readonly string[];
  /** Cells whose formula the page cannot compute, which keep the file's value. */
  readonly kept: readonly KeptCell[];
  readonly circles: Circles;
}

/** What reads its own result. */
export interface Circles {
  readonly cells: readonly KeptCell[];
  readonly names: readonly string[];
}

export async function readFile(bytes: Uint8Array, name: string): Promise<ReadFile> {
  const file = readPackage(bytes);
  const workbook = readWorkbook(file);
  const read = await withoutBrokenPictures(workbookData(workbook, name));
  const { data, kept } = keepFormulas(read.data, await knownFunctions());
  const losses = [...lossesOf(file), ...(read.broken ? ["damaged pictures"] : [])];
  return { data, kept, losses, circles: circlesIn(workbook) };
}

/** The circles in the open workbook. */
export const circlesNow = (workbook: PageWorkbook): Circles =>
  circlesIn(readWorkbook(readPackage(writeFile(workbook).bytes)));

function circlesIn(workbook: ReadWorkbook): Circles {
  const book = bookOf(workbook);
  const cells = [...findCircles(book.formulas, readsFinder(book))];
  return {
    cells: cells.map(({ sheet, row, column }) => ({
      sheet: sheet.name,
      address: cellAddress(row, column),
    })),
    names: circularNames(workbook.names),
  };
}

/** The open workbook as a file, and what is to be said of it. */
export interface WrittenFile {
  readonly bytes: Uint8Array;
  readonly losses: readonly string[];
  readonly kept: readonly KeptCell[];
}

export function writeFile({ save, readCell, spill }: PageWorkbook): WrittenFile {
  const { data, kept } = restoreFormulas(save());
  const bytes = writeWorkbook(workbookModel({ save: () => data, read: readCell, spill }));
  return { bytes, kept, losses: asksForColor(data) ? ["filters by colour"] : [] };
}
