import { readDemo } from "../hosts/workbook/demo";
import { openWorkbook } from "../hosts/workbook/headless";
import { writeWorkbook } from "../hosts/workbook/xlsx";
import { implementations } from "../functions/implementations";
import { readMetadata } from "./catalogue";

/**
 * The demo as a file: it opens in Excel with the add-in, our functions spelled as Excel keeps them,
 * their results cached, and those that spill marked so that they do.
 */
export async function demoFile(): Promise<Uint8Array> {
  const book = await openWorkbook(readDemo(), readMetadata(), implementations);
  try {
    return writeWorkbook(book);
  } finally {
    book.close();
  }
}
