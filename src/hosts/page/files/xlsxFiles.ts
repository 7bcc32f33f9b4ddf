/**
 * Reading and writing files is a bundle of its own, which the page fetches when it is first asked to
 * open or save one.
 */
import type { IWorkbookData } from "@univerjs/core";
import { workbookData, workbookModel } from "../../../engine/data";
import { keepFormulas, restoreFormulas, type KeptCell } from "../../../engine/keptFormulas";
import { knownFunctions } from "../../../engine/known";
import { lossesOf, readPackage, readWorkbook, writeWorkbook } from "../../../xlsx";
import { withoutBrokenPictures } from "./brokenPictures";
import type { PageWorkbook } from "../spreadsheet";

/** A file read, and what of it a copy saved here would not have. */
export interface ReadFile {
  readonly data: IWorkbookData;
  readonly losses: readonly string[];
  /** Cells whose formula the page cannot compute, which keep the file's value. */
  readonly kept: readonly KeptCell[];
}

export async function readFile(bytes: Uint8Array, name: string): Promise<ReadFile> {
  const file = readPackage(bytes);
  const read = await withoutBrokenPictures(workbookData(readWorkbook(file), name));
  const { data, kept } = keepFormulas(read.data, await knownFunctions());
  return { data, kept, losses: [...lossesOf(file), ...(read.broken ? ["damaged pictures"] : [])] };
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
  return { bytes, kept, losses: hasFilter(data) ? ["filters"] : [] };
}

/** Rows that are filtered out are hidden in the page alone. */
function hasFilter({ resources }: IWorkbookData): boolean {
  const kept = resources?.find(({ name }) => name === "SHEET_FILTER_PLUGIN")?.data;
  return kept !== undefined && kept !== "" && kept !== "{}";
}
