/** What a key does while Ctrl, on a Mac Cmd, is held. */
export type Shortcuts = Readonly<Record<string, () => void>>;

/**
 * Keys that the browser would otherwise take for the page itself, not for the workbook: Ctrl+S saves
 * the workbook, not the page's text.
 */
export function listenForShortcuts(shortcuts: Shortcuts): void {
  document.addEventListener(
    "keydown",
    (event) => {
      const { key, ctrlKey, metaKey, altKey, shiftKey } = event;
      if (!(ctrlKey || metaKey) || altKey || shiftKey || document.querySelector("dialog[open]")) {
        return;
      }
      const action = shortcuts[key.toLowerCase()];
      if (!action) return;
      event.preventDefault();
      event.stopPropagation();
      action();
    },
    true,
  );
}
