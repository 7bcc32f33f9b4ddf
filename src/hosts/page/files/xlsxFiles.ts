/**
 * Reading and writing files is a bundle of its own, which the page fetches when it is first asked to
 * open or save one.
 */
import type { IWorkbookData } from "@univerjs/core";
import { workbookData, workbookModel } from "../../../engine/data";
import { lossesOf, readPackage, readWorkbook, writeWorkbook } from "../../../xlsx";
import { withoutBrokenPictures } from "./brokenPictures";
import type { PageWorkbook } from "../spreadsheet";

/** A file read, and what of it a copy saved here would not have. */
export interface ReadFile {
  readonly data: IWorkbookData;
  readonly losses: readonly string[];
}

export async function readFile(bytes: Uint8Array, name: string): Promise<ReadFile> {
  const file = readPackage(bytes);
  const { data, broken } = await withoutBrokenPictures(workbookData(readWorkbook(file), name));
  return { data, losses: [...lossesOf(file), ...(broken ? ["damaged pictures"] : [])] };
}

export function writeFile({ save, readCell, spill }: PageWorkbook): Uint8Array {
  return writeWorkbook(workbookModel({ save, read: readCell, spill }));
}
