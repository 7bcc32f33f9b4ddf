import { onceSoon } from "../onceSoon";
import { COMMAND_NAMES, PLACE_NAMES, SHEET_BAR_NAMES, ZOOM_NAMES } from "./controlNames";

/**
 * Gives a name to each of the spreadsheet's controls that shows an icon only, so that a screen
 * reader and a mouse at rest both say what it does. The spreadsheet makes its controls as they are
 * needed, so this goes on for as long as the page is open.
 */
export function nameControls(workbook: HTMLElement): void {
  const nameAll = () => {
    // Dialogs stand beside the workbook, not in it.
    for (const control of document.querySelectorAll<HTMLElement>("button, [type=button]")) {
      const command = control.closest("[data-u-command]")?.getAttribute("data-u-command");
      if (command && !control.textContent)
        name(control, COMMAND_NAMES[command] ?? wordsOf(command));
      if (control.tagName === "DIV") asButton(control);
      if (control.matches("a[data-slot]")) control.setAttribute("role", "button");
    }
    for (const [selector, text] of PLACE_NAMES) {
      for (const control of document.querySelectorAll<HTMLElement>(selector)) name(control, text);
    }
    nameInOrder(workbook, "[data-u-comp=sheet-bar-append-button]", SHEET_BAR_NAMES);
    nameInOrder(workbook, "[data-u-comp=button]", ZOOM_NAMES);
    tidyRoles(workbook);
  };
  const nameSoon = onceSoon(nameAll, (run) => setTimeout(run, PAUSE));
  new MutationObserver(nameSoon).observe(document.body, { childList: true, subtree: true });
  nameAll();
}

/** Names are for who looks or listens; what is typed goes first. */
const PAUSE = 60;

function name(control: HTMLElement, text: string): void {
  if (control.getAttribute("aria-label") === text) return;
  control.setAttribute("aria-label", text);
  if (!control.title) control.title = text;
}

function nameInOrder(place: HTMLElement, selector: string, names: readonly string[]): void {
  place.querySelectorAll<HTMLElement>(selector).forEach((control, index) => {
    if (!control.textContent && names[index] !== undefined) name(control, names[index]);
  });
}

/** "sheet.command.delete-row" is called "delete row". */
function wordsOf(command: string): string {
  return command.slice(command.lastIndexOf(".") + 1).replaceAll("-", " ");
}

/** An element that opens a menu is a button, but where it holds a field of its own. */
function asButton(control: HTMLElement): void {
  if (control.querySelector("input, button")) {
    control.removeAttribute("aria-haspopup");
    control.removeAttribute("aria-expanded");
  } else {
    control.setAttribute("role", "button");
    control.tabIndex = 0;
    if (!control.textContent && !control.ariaLabel) name(control, "More");
  }
}

/** Roles that no browser knows, and an order of the Tab key that goes before the page's own. */
function tidyRoles(place: HTMLElement): void {
  place.querySelector("[role=track]")?.setAttribute("role", "presentation");
  const handle = place.querySelector<HTMLElement>("[role=handle]");
  handle?.removeAttribute("role");
  if (handle) name(handle, "Zoom");
  for (const stop of place.querySelectorAll<HTMLElement>("a[role=button]:not([data-slot])")) {
    stop.setAttribute("role", "presentation");
  }
  for (const canvas of place.querySelectorAll("canvas")) {
    canvas.tabIndex = canvas.id.includes("sheet-main") ? 0 : -1;
  }
}
