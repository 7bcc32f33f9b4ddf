import { element } from "../../elements/element";

let made = 0;

/** An id that no other element of the page has. */
export const newId = (stem: string): string => `pane-${stem}-${++made}`;

/** A line that screen readers read out when its text changes. */
export const liveLine = (className: string): HTMLElement =>
  element("p", { className, role: "status" });

/** Says in a live line that something was done, or that it could not be: a mark, a colour and an edge of its own. */
export function tell(line: HTMLElement, text: string, outcome: "done" | "failed" = "done"): void {
  line.textContent = text;
  line.dataset.outcome = outcome;
}
