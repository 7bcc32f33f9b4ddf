import type { PageWorkbook } from "./spreadsheet";

/**
 * Shows under the workbook why the selected cell holds an error. A cell itself has room for the
 * error's code only; this is where a screen reader hears the rest as well.
 */
export function showMessages(workbook: PageWorkbook, strip: HTMLElement): void {
  const update = () => {
    strip.textContent = workbook.selectedMessage() ?? "";
  };
  workbook.onChange(update);
  update();
}
