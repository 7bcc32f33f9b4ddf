type Child = Node | string | undefined | false;

/**
 * An element with its properties and children: `element("button", { className: "go" }, "Insert")`.
 * What is not a property of the element ("aria-label") is set as an attribute.
 */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  properties: Readonly<Record<string, unknown>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(properties)) {
    if (value === undefined) continue;
    if (name in made) Object.assign(made, { [name]: value });
    else made.setAttribute(name, String(value));
  }
  made.append(...children.filter((child) => child !== undefined && child !== false));
  return made;
}

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
