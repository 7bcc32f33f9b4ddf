import type { IWorkbookData } from "@univerjs/core";
import type { DBSchema, IDBPDatabase } from "idb";
import { openDB } from "idb";

/** A workbook kept on this device, without what is in it. */
export interface Book {
  readonly id: string;
  readonly name: string;
  /** When it was last opened and changed, in milliseconds. */
  readonly opened: number;
  readonly changed: number;
  /** When it was last written to a file, if it was. */
  readonly saved?: number;
  /** The file it was opened from or saved to, where the browser may write to one. */
  readonly file?: FileSystemFileHandle;
  /** What a file saved from it lacks of the file it came from. */
  readonly losses?: readonly string[];
}

/** One change to a workbook: a command of the spreadsheet's, which brings it about again. */
export interface Change {
  readonly book: string;
  readonly id: string;
  readonly params: unknown;
}

interface Schema extends DBSchema {
  books: { key: string; value: Book };
  /** A workbook as it once stood; the changes since then stand in `changes`. */
  contents: { key: string; value: { readonly id: string; readonly data: IWorkbookData } };
  changes: { key: number; value: Change; indexes: { book: string } };
}

export type Database = IDBPDatabase<Schema>;

/** Opens the browser's database for this page, on this device. */
export function openDatabase(): Promise<Database> {
  return openDB<Schema>("reps-to-spare", 1, {
    upgrade(database) {
      database.createObjectStore("books", { keyPath: "id" });
      database.createObjectStore("contents", { keyPath: "id" });
      database.createObjectStore("changes", { autoIncrement: true }).createIndex("book", "book");
    },
    // A newer version of the page wants to open it: that one waits for nothing.
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
    },
  });
}
