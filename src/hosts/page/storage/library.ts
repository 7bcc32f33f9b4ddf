import type { IWorkbookData } from "@univerjs/core";
import type { MessageStrip } from "../messageStrip";
import type { PageWorkbook } from "../spreadsheet";
import type { Book } from "./database";
import { emptyWorkbook } from "./emptyWorkbook";
import { createKeeper, type Keeper } from "./keeper";
import { lockBook } from "./lock";
import { freeName } from "./names";
import { replay } from "./replay";
import type { Beginning } from "./resume";
import type { Shelf } from "./shelf";

/** What is open: a workbook on the shelf, or one that goes there with its first change. */
export interface Opened {
  readonly name: string;
  readonly book?: Book;
}

/** What a file brings along when it is opened. */
export interface FromFile {
  readonly file?: FileSystemFileHandle;
  readonly losses: readonly string[];
}

/** The workbooks on this device, and the one of them that is open. */
export interface Library {
  readonly opened: Opened;
  list(): Promise<Book[]>;
  openBook(id: string): Promise<void>;
  openDemo(): Promise<void>;
  openNew(): Promise<void>;
  /** Opens what a file held, and keeps it. */
  openFile(data: IWorkbookData, name: string, from: FromFile): Promise<void>;
  rename(id: string, name: string): Promise<void>;
  copy(id: string): Promise<void>;
  remove(id: string): Promise<void>;
  /** Notes that the open workbook was written to a file. */
  savedTo(name: string, file?: FileSystemFileHandle): Promise<void>;
  /** Calls back when another workbook is open, or what is known of it changed. */
  onChange(listener: () => void): void;
  /** Puts the open workbook on the shelf whole. */
  settle(): Promise<void>;
  /** Whether some change is kept nowhere but in the page. */
  readonly behind: boolean;
}

/** Follows the open workbook and keeps what is done in it. */
export function createLibrary(
  workbook: PageWorkbook,
  shelf: Shelf,
  demo: () => Promise<IWorkbookData>,
  { say }: MessageStrip,
  begun: Beginning,
): Library {
  let opened: Opened = begun.book
    ? { name: begun.book.name, book: begun.book }
    : { name: DEMO_NAME };
  let release = begun.release;
  const listeners: (() => void)[] = [];
  const tell = () => listeners.forEach((listener) => listener());

  const keeperFor = (book: Book) =>
    createKeeper(
      shelf,
      book.id,
      workbook.save,
      (error) => say(fullMessage(book.name, error), "trouble"),
      () => say("Everything is kept on this device again."),
    );

  let keeper: Keeper | undefined = begun.book && keeperFor(begun.book);
  if (begun.book) void shelf.describe(begun.book.id, { opened: Date.now() });

  const update = (what: Partial<Book>) => {
    if (!opened.book) return;
    const book = { ...opened.book, ...what };
    opened = { name: book.name, book };
    tell();
  };

  workbook.onEdit((edit) => {
    if (keeper) {
      keeper.keep(edit);
      update({ changed: Date.now() });
    } else void keepFirst();
  });

  /** The first change to the demo or to a new workbook makes it one of those on the shelf. */
  async function keepFirst(): Promise<void> {
    const now = Date.now();
    const id = workbook.id();
    const name = opened.name === DEMO_NAME ? DEMO_COPY : opened.name;
    const book: Book = { id, name, opened: now, changed: now };
    keeper = keeperFor(book);
    opened = { name, book };
    // Changes that follow are noted, and stand behind what is taken now.
    const added = shelf.add(book, workbook.save());
    void lockBook(id).then((unlock) => (release = unlock));
    try {
      await added;
      const others = (await shelf.list()).filter((other) => other.id !== id);
      const free = freeName(name, others);
      if (free !== name) await shelf.describe(id, { name: free });
      update({ name: free });
    } catch (error) {
      say(fullMessage(name, error), "trouble");
      await keeper.settle();
    }
    void navigator.storage?.persist?.();
  }

  async function put(data: IWorkbookData, next: Opened, prepare?: () => void): Promise<void> {
    await keeper?.settle();
    const lock = next.book ? await lockBook(next.book.id) : () => undefined;
    try {
      await workbook.open(data, prepare);
    } catch (error) {
      lock();
      throw error;
    }
    release();
    release = lock;
    opened = next;
    keeper = next.book && keeperFor(next.book);
    if (next.book) await shelf.describe(next.book.id, { opened: Date.now() });
    tell();
  }

  async function openBook(id: string): Promise<void> {
    if (id === opened.book?.id) return;
    const kept = await shelf.take(id);
    if (!kept) throw new Error("it is no longer on this device");
    await put({ ...kept.data, id }, { name: kept.book.name, book: kept.book }, () => {
      replay(workbook.univer, kept.changes);
    });
  }

  const openDemo = async () =>
    put({ ...(await demo()), id: crypto.randomUUID() }, { name: DEMO_NAME });

  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void keeper?.settle();
  });

  return {
    get opened() {
      return opened;
    },
    get behind() {
      return keeper?.behind ?? false;
    },
    list: () => shelf.list(),
    settle: async () => keeper?.settle(),
    openBook,
    openDemo,

    async openNew() {
      const name = freeName("Workbook", await shelf.list());
      await put(emptyWorkbook(crypto.randomUUID()), { name });
    },

    async openFile(data, name, { file, losses }) {
      const now = Date.now();
      const id = crypto.randomUUID();
      const book: Book = {
        ...{ id, name: freeName(name, await shelf.list()), opened: now, changed: now, saved: now },
        ...{ losses, ...(file && { file }) },
      };
      await put({ ...data, id }, { name: book.name, book });
      try {
        await shelf.add(book, workbook.save());
      } catch (error) {
        say(fullMessage(book.name, error), "trouble");
      }
    },

    async rename(id, name) {
      await shelf.describe(id, { name });
      if (opened.book?.id === id) update({ name });
      tell();
    },

    async copy(id) {
      if (opened.book?.id === id) await keeper?.settle();
      const kept = await shelf.take(id);
      if (!kept) return;
      const now = Date.now();
      const copy = { id: crypto.randomUUID(), opened: now, changed: now };
      const name = freeName(`Copy of ${kept.book.name}`, await shelf.list());
      await shelf.add({ ...copy, name }, { ...kept.data, id: copy.id });
      for (const change of kept.changes) {
        const params = ofUnit(change.params, copy.id);
        await shelf.note({ ...change, params, book: copy.id });
      }
      tell();
    },

    async remove(id) {
      if (opened.book?.id === id) {
        keeper = undefined;
        opened = { name: opened.name };
        await openDemo();
      }
      await shelf.remove(id);
      tell();
    },

    async savedTo(name, file) {
      if (!opened.book) return;
      const saved = { saved: Date.now(), ...(file && { file, name }) };
      await shelf.describe(opened.book.id, saved);
      update(saved);
    },

    onChange: (listener) => void listeners.push(listener),
  };
}

const DEMO_NAME = "Demo";
const DEMO_COPY = "My copy of the demo";

/** What a command was about, in another workbook. */
const ofUnit = (params: unknown, unitId: string) => ({ ...(params as object), unitId });

export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function fullMessage(name: string, error: unknown): string {
  const full = error instanceof DOMException && error.name === "QuotaExceededError";
  const why = full ? "this device has no room left" : reasonOf(error);
  return `What you change in ${name} is in this tab only: ${why}. Save it to a file before you close the page.`;
}
