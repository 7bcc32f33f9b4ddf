import type { PageWorkbook } from "./spreadsheet";

/**
 * Shows under the workbook why the selected cell holds an error. A cell itself has room for the
 * error's code only; this is where a screen reader hears the rest as well.
 */
export function showMessages(workbook: PageWorkbook, strip: HTMLElement): void {
  const update = () => {
    const message = workbook.selectedMessage();
    strip.textContent = message ?? "";
    strip.classList.toggle("error", message !== undefined);
  };
  workbook.onChange(update);
  update();
}
