import type { PageWorkbook } from "./spreadsheet";

/** What the page says: a note of what was done, or a trouble. */
export type Kind = "note" | "trouble";

/** The line under the workbook. */
export interface MessageStrip {
  /** Says something, until something else is said. */
  say(text: string, kind?: Kind): void;
}

/**
 * The line under the workbook, where the page says what it did, and why the selected cell holds an
 * error. A cell itself has room for the error's code only; this is where a screen reader hears the
 * rest as well.
 */
export function createMessageStrip(strip: HTMLElement): MessageStrip & {
  /** Shows the messages of the cells that are selected from now on, while there are any. */
  follow(workbook: PageWorkbook): void;
} {
  let said = { text: "", kind: "note" as Kind };
  let ofCell: string | undefined;
  const update = () => {
    strip.textContent = ofCell ?? said.text;
    strip.dataset.kind = ofCell === undefined ? said.kind : "trouble";
  };
  return {
    say(text, kind = "note") {
      said = { text, kind };
      ofCell = undefined;
      update();
    },
    follow(workbook) {
      workbook.onChange(() => {
        ofCell = workbook.selectedMessage();
        update();
      });
    },
  };
}
