import { ICommandService, type Univer } from "@univerjs/core";
import type { IShortcutItem } from "@univerjs/preset-sheets-core";
import { Editor, IEditorService, IShortcutService, KeyCode } from "@univerjs/preset-sheets-core";
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

/**
 * Puts the caret behind a name that was chosen from the list at once. The spreadsheet does so a moment
 * later, by when a quick hand has typed the first argument, of which a part would then stand before the
 * name's end and a part behind it.
 */
export function typeOnBehindChosenName(univer: Univer): void {
  const injector = univer.__getInjector();
  const commands = injector.get(ICommandService);
  let chosen: (() => void) | undefined;
  commands.beforeCommandExecuted(({ id }) => {
    if (!isChoice(id)) return;
    const editor = injector.get(IEditorService).getFocusEditor();
    const caret = editor?.getSelectionRanges()[0]?.startOffset;
    if (!(editor instanceof Editor) || caret === undefined) return;
    const length = lengthOf(editor);
    chosen = () => {
      const grown = lengthOf(editor) - length;
      if (grown !== 0) putCaretOnce(editor, caret + grown);
    };
  });
  commands.onCommandExecuted(({ id }) => {
    if (!isChoice(id)) return;
    chosen?.();
    chosen = undefined;
  });
}

/** Puts the caret somewhere now, and has the spreadsheet not put it there again. */
function putCaretOnce(editor: Editor, place: number): void {
  const put = editor.setSelectionRanges.bind(editor);
  put([{ startOffset: place, endOffset: place }]);
  editor.setSelectionRanges = (ranges, shouldFocus) => {
    const again = ranges.length === 1 && ranges[0]!.startOffset === place;
    if (!again) return put(ranges, shouldFocus);
    editor.setSelectionRanges = put;
  };
}

const lengthOf = (editor: Editor): number => editor.getDocumentData().body?.dataStream.length ?? 0;

/** What the list registers for its keys, one command for each editor of formulas. */
const isChoice = (id: string): boolean =>
  id.startsWith("sheet.formula-embedding-editor.search_function.");

const choosesName = ({ id, binding }: IShortcutItem): boolean =>
  isChoice(id) && (binding === KeyCode.ENTER || binding === KeyCode.TAB);
