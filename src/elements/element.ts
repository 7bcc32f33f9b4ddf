type Child = Node | string | undefined | false;

/**
 * An element with its properties and children: `element("button", { className: "go" }, "Insert")`.
 * What is not a property of the element ("aria-label") is set as an attribute; text only ever becomes text.
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
