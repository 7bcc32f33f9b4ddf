import type { IWorkbookData } from "@univerjs/core";
import type { Book, Change } from "./database";
import { lockBook } from "./lock";
import type { Shelf } from "./shelf";

/** What the page begins with. */
export interface Beginning {
  readonly data: IWorkbookData;
  readonly changes: readonly Change[];
  readonly book?: Book;
  readonly release: () => void;
  /** Why it is not the workbook that was open last. */
  readonly trouble?: string;
}

/** Under this name the browser remembers which workbook was being opened when the page went away. */
const OPENING = "reps-to-spare opening";

/** The workbook that was open last; the demo where there is none, or where it cannot be had. */
export async function beginning(
  shelf: Shelf,
  demo: () => Promise<IWorkbookData>,
): Promise<Beginning> {
  const withDemo = async (trouble?: string): Promise<Beginning> => ({
    data: { ...(await demo()), id: crypto.randomUUID() },
    changes: [],
    release: () => undefined,
    ...(trouble !== undefined && { trouble }),
  });
  const [last] = await shelf.list().catch(() => []);
  if (!last) return withDemo();
  if (localStorage.getItem(OPENING) === last.id) {
    localStorage.removeItem(OPENING);
    return withDemo(`${last.name} did not open the last time. It is still among your workbooks.`);
  }
  try {
    const release = await lockBook(last.id);
    const kept = await shelf.take(last.id);
    if (!kept) throw new Error("it is no longer on this device");
    localStorage.setItem(OPENING, last.id);
    const { book, changes } = kept;
    return { data: { ...kept.data, id: book.id }, changes, book, release };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return withDemo(`${last.name} was not opened: ${reason}.`);
  }
}

/** Says that the page came up: the next visit may open the same workbook again. */
export function begun(): void {
  localStorage.removeItem(OPENING);
}
