import type { ICommandInfo, IWorkbookData } from "@univerjs/core";
import type { Shelf } from "./shelf";

/** After so many changes the workbook is put on the shelf whole, so that it opens fast again. */
const MOST_CHANGES = 300;

/** Keeps one open workbook as it is changed. */
export interface Keeper {
  /** Keeps one change, at once. */
  keep(edit: Readonly<ICommandInfo>): void;
  /** Puts the workbook on the shelf whole, if anything changed since. */
  settle(): Promise<void>;
  /** Whether there are changes that the shelf did not take. */
  readonly behind: boolean;
}

/**
 * Keeps each change to a workbook on the shelf as it is made. Where the shelf takes no more, because
 * the device is full, the workbook stays whole in the page and every further change tries again.
 */
export function createKeeper(
  shelf: Shelf,
  book: string,
  save: () => IWorkbookData,
  onTrouble: (error: unknown) => void,
  onRelief: () => void,
): Keeper {
  let noted = 0;
  let behind = false;

  async function renew(): Promise<void> {
    noted = 0;
    try {
      await shelf.renew(book, save());
      if (behind) onRelief();
      behind = false;
    } catch (error) {
      behind = true;
      onTrouble(error);
    }
  }

  return {
    keep({ id, params }) {
      noted++;
      // A change that was not taken is in none of the noted ones, so the whole must go.
      if (behind || noted > MOST_CHANGES) void renew();
      else shelf.note({ book, id, params }).catch(() => renew());
      // The change itself goes first: should the tab die now, the time of the change may be lost, not the change.
      void shelf.describe(book, { changed: Date.now() }).catch(() => undefined);
    },
    async settle() {
      if (noted > 0 || behind) await renew();
    },
    get behind() {
      return behind;
    },
  };
}
