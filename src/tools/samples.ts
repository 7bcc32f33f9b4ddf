import { workbookModel } from "../engine/data";
import { openWorkbook, type HeadlessWorkbook } from "../engine/headless";
import { bookOf } from "../recalculate/book";
import { calculate } from "../recalculate/calculate";
import { portableCopy } from "../recalculate/copies/portable";
import { readPackage, readWorkbook, writePackage, writeWorkbook } from "../xlsx";
import { implementations } from "../functions/implementations";
import { readMetadata } from "./catalogue";
import { readDemo } from "./demo";

/** The demo, computed without a screen. */
export const openDemo = (): Promise<HeadlessWorkbook> =>
  openWorkbook(readDemo(), readMetadata(), implementations);

/**
 * The demo as a file: it opens in Excel with the add-in, our functions spelled as Excel keeps them,
 * their results cached, and those that spill marked so that they do.
 */
export async function demoFile(): Promise<Uint8Array> {
  const book = await openDemo();
  try {
    return fileOf(book);
  } finally {
    book.close();
  }
}

/** What stands in a computed workbook, as a file. */
export const fileOf = (book: HeadlessWorkbook): Uint8Array => writeWorkbook(workbookModel(book));

/** The demo's copy for those without the add-in. */
export async function portableDemoFile(demo: Uint8Array): Promise<Uint8Array> {
  const book = bookOf(readWorkbook(readPackage(demo)));
  const outcomes = await calculate(book, { metadata: readMetadata(), implementations });
  return writePackage(portableCopy(book, outcomes).file);
}
