import type { IWorkbookData } from "@univerjs/core";
import type { Book, Change, Database } from "./database";
import { openDatabase } from "./database";

/** A workbook taken from the shelf: as it once stood, and what was changed since. */
export interface Kept {
  readonly book: Book;
  readonly data: IWorkbookData;
  readonly changes: readonly Change[];
}

/** The workbooks on this device. */
export interface Shelf {
  /** The last opened first. */
  list(): Promise<Book[]>;
  take(id: string): Promise<Kept | undefined>;
  /** Puts a workbook there, whole. */
  add(book: Book, data: IWorkbookData): Promise<void>;
  /** Notes a change to a workbook; what is noted later comes after it. */
  note(change: Change): Promise<void>;
  /** Replaces a workbook and all its noted changes by how it stands now. */
  renew(id: string, data: IWorkbookData): Promise<void>;
  /** Changes what is known of a workbook, not what is in it. */
  describe(id: string, what: Partial<Omit<Book, "id">>): Promise<void>;
  remove(id: string): Promise<void>;
}

/** Opens the shelf; where the browser has none to give, one that keeps nothing and says so. */
export async function openShelf(): Promise<Shelf> {
  try {
    return shelfIn(await openDatabase());
  } catch {
    return withoutShelf();
  }
}

function withoutShelf(): Shelf {
  const keepsNothing = () => Promise.reject(new Error("this browser keeps nothing for this page"));
  return {
    list: () => Promise.resolve([]),
    take: keepsNothing,
    add: keepsNothing,
    note: keepsNothing,
    renew: keepsNothing,
    describe: () => Promise.resolve(),
    remove: keepsNothing,
  };
}

function shelfIn(database: Database): Shelf {
  return {
    async list() {
      const books = await database.getAll("books");
      return books.sort((a, b) => b.opened - a.opened);
    },

    async take(id) {
      const from = database.transaction(["books", "contents", "changes"]);
      const [book, contents, changes] = await Promise.all([
        from.objectStore("books").get(id),
        from.objectStore("contents").get(id),
        from.objectStore("changes").index("book").getAll(id),
      ]);
      return book && contents && { book, data: contents.data, changes };
    },

    async add(book, data) {
      const to = database.transaction(["books", "contents"], "readwrite");
      await Promise.all([
        to.objectStore("books").put(book),
        to.objectStore("contents").put({ id: book.id, data }),
        to.done,
      ]);
    },

    async note(change) {
      const to = database.transaction("changes", "readwrite", { durability: "strict" });
      const added = to.store.add(change);
      // Committed at once: a tab that dies now has left the change to the browser already.
      to.commit();
      await Promise.all([added, to.done]);
    },

    async renew(id, data) {
      const to = database.transaction(["contents", "changes"], "readwrite");
      const done = [
        to.objectStore("contents").put({ id, data }),
        forget(to.objectStore("changes"), id),
        to.done,
      ];
      await Promise.all(done);
    },

    async describe(id, what) {
      const to = database.transaction("books", "readwrite");
      const book = await to.store.get(id);
      if (book) await to.store.put({ ...book, ...what });
      await to.done;
    },

    async remove(id) {
      const from = database.transaction(["books", "contents", "changes"], "readwrite");
      await Promise.all([
        from.objectStore("books").delete(id),
        from.objectStore("contents").delete(id),
        forget(from.objectStore("changes"), id),
        from.done,
      ]);
    },
  };
}

interface Changes {
  index(name: "book"): { getAllKeys(id: string): Promise<number[]> };
  delete(key: number): Promise<void>;
}

/** Removes the changes noted of a workbook so far. */
async function forget(changes: Changes, id: string): Promise<void> {
  const keys = await changes.index("book").getAllKeys(id);
  await Promise.all(keys.map((key) => changes.delete(key)));
}
