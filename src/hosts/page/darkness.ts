import type { PageWorkbook } from "./spreadsheet";

/** Keeps the spreadsheet dark while the reader's system is, as the rest of the page is by its colours. */
export function followDarkness({ api }: PageWorkbook): void {
  const dark = window.matchMedia("(prefers-color-scheme: dark)");
  const follow = () => api.toggleDarkMode(dark.matches);
  dark.addEventListener("change", follow);
  if (dark.matches) follow();
}
