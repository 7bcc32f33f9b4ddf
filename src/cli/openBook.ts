import { basename, extname } from "node:path";
import { bookOf, type Book } from "../recalculate/book";
import { readPackage, readWorkbook, UnreadableFile } from "../xlsx";
import { endingOf, isText, kindOf, misfit, type Kind } from "./ending";
import { inflate, readInput, STANDARD, type Pieces } from "./files";
import { readTable, workbookOf, type Table } from "./tables";

/** A workbook that was read, whatever it came as. */
export interface OpenBook {
  readonly book: Book;
  readonly kind: Kind;
  /** The values as they were written, where it came as a text of them. */
  readonly table: Table | undefined;
}

/** Reads a workbook, or a text of values as a workbook of one sheet. A name that does not fit the content is refused. */
export async function openBook(path: string, standardInput: Pieces): Promise<OpenBook> {
  const bytes = await readInput(path, standardInput);
  const ending = endingOf(path);
  if (isText(ending) || (ending === "" && bytes.length > 0 && !isPacked(bytes))) {
    if (isPacked(bytes)) throw new UnreadableFile(misfitOf(path, bytes));
    const table = readTable(bytes, ending === "tsv" ? "\t" : undefined);
    const name = path === STANDARD ? "Sheet1" : basename(path, extname(path)).slice(0, 31);
    const kind = table.separator === "\t" ? "tsv" : "csv";
    return { book: bookOf(workbookOf(table, sheetName(name))), kind, table };
  }
  const file = readPackage(bytes, inflate);
  const kind = kindOf(file);
  const reason = misfit(path, kind);
  if (reason !== undefined) throw new UnreadableFile(reason);
  return { book: bookOf(readWorkbook(file)), kind, table: undefined };
}

/** Workbooks of all kinds come as an archive or a container, which no text starts like. */
const isPacked = ([first, second, third]: Uint8Array) =>
  (first === 0x50 && second === 0x4b && third! < 0x20) || (first === 0xd0 && second === 0xcf);

/** What is said of an archive or container under a text's name. */
function misfitOf(path: string, bytes: Uint8Array): string {
  // What is no workbook at all is refused as such.
  return misfit(path, kindOf(readPackage(bytes, inflate))) ?? "it is not text";
}

/** A sheet may not be called as spreadsheets forbid it. */
const sheetName = (name: string) => name.replace(/[[\]:*?/\\]|^'|'$/g, " ").trim() || "Sheet1";
