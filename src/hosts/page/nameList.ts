import type { Univer } from "@univerjs/core";
import type { IShortcutItem } from "@univerjs/preset-sheets-core";
import { IEditorService, IShortcutService, KeyCode } from "@univerjs/preset-sheets-core";
import { IDescriptionService } from "@univerjs/sheets-formula";

/** The end of a text that could be the beginning of a function's name. */
const NAME = /(?<![\p{L}\d_.$])[\p{L}_][\p{L}\d_.]*$/u;

/**
 * Lets Enter and Tab end a formula although the list of functions' names still stands below it. The
 * list goes away only when nobody has typed for a while, and takes both keys as long as it stands: in
 * a formula typed without a pause they would be lost, and the next formula go into the same cell.
 * They choose from the list only where a function's name is being typed.
 */
export function endFormulasPastNameList(univer: Univer): void {
  const injector = univer.__getInjector();
  const shortcuts = injector.get(IShortcutService);
  const register = shortcuts.registerShortcut.bind(shortcuts);
  shortcuts.registerShortcut = (item) =>
    register(choosesName(item) ? { ...item, preconditions: isAtName } : item);

  function isAtName(): boolean {
    const editor = injector.get(IEditorService).getFocusEditor();
    const caret = editor?.getSelectionRanges()[0]?.startOffset;
    const name = editor?.getDocumentData().body?.dataStream.slice(0, caret).match(NAME)?.[0];
    if (name === undefined) return false;
    return injector.get(IDescriptionService).getSearchListByNameFirstLetter(name).length > 0;
  }
}

const choosesName = ({ id, binding }: IShortcutItem): boolean =>
  id.startsWith("sheet.formula-embedding-editor.search_function.") &&
  (binding === KeyCode.ENTER || binding === KeyCode.TAB);
