import { mountPane } from "../../pane/pane";
import { PANE_DATA, type PaneData } from "../../pane/data";
import { element } from "../../elements/element";
import type { Implementations } from "../../engine/metadata";
import { workbookPort } from "./panePort";
import type { PageWorkbook } from "./spreadsheet";

/** Puts the pane in its place beside the workbook, and into the page's header the button that opens and closes it. */
export async function mountPaneBeside(
  side: HTMLElement,
  workbook: PageWorkbook,
  implementations: Implementations,
): Promise<void> {
  const response = await fetch(PANE_DATA);
  if (!response.ok) throw new Error(`${PANE_DATA}: ${response.status} ${response.statusText}`);
  const data = (await response.json()) as PaneData;

  mountPane(side, {
    data,
    port: workbookPort(workbook),
    implementations,
    helpPage: "help.html",
    home: document.baseURI,
  });
  undoFromPane(side, workbook);
  const button = element(
    "button",
    { type: "button", className: "pane-button", "aria-controls": side.id },
    "Toolbox",
  );
  const show = (open: boolean) => {
    side.hidden = !open;
    button.setAttribute("aria-expanded", String(open));
  };
  button.addEventListener("click", () => show(side.hidden));
  show(!side.hidden);
  document.querySelector("body > header")!.append(button);
}

/** What the pane has just inserted is undone as anything else is, without a click into the cells before. */
function undoFromPane(side: HTMLElement, { api }: PageWorkbook): void {
  side.addEventListener("keydown", (event) => {
    const isText = event.target instanceof HTMLInputElement;
    if (isText || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
    event.preventDefault();
    void (event.shiftKey ? api.redo() : api.undo());
  });
}
