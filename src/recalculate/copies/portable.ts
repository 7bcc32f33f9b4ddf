import type { Book } from "../book";
import type { Outcome } from "../calculate";
import { withChange } from "../../xlsx/patch/editPackage";
import { findNeed } from "../need";
import { toFile } from "../../formula/future";
import { childOf, childrenOf, parseXml, writeXml, type Package } from "../../xlsx/package";
import { lambdas, lambdaText, PREFIX, withHelpers } from "./lambdas";
import { copyWith } from "./plain";
import { rewriteFormula } from "./rewriteFormula";

/**
 * A copy that goes on calculating without the add-in, in a spreadsheet that knows LAMBDA: our
 * functions that a formula can express become names of the workbook. The others become values, each
 * formula in a note.
 */
export function portableCopy(book: Book, outcomes: readonly Outcome[]): Package {
  const needsOurs = findNeed(book);
  const calls = new Set<string>();
  const copy = copyWith(book, outcomes, (cell) => {
    if (!needsOurs(cell)) return undefined;
    const rewritten = rewriteFormula(cell.text);
    if (!rewritten || needsOurs({ ...cell, text: rewritten.text })) return null;
    for (const call of rewritten.calls) calls.add(call);
    return rewritten.text;
  });
  return calls.size === 0 ? copy : addNames(copy, book.path, withHelpers(calls));
}

/** Defines the copy's functions as names of the workbook. */
function addNames(file: Package, workbookPath: string, names: readonly string[]): Package {
  return withChange(file, workbookPath, (xml) => {
    const root = parseXml(xml, workbookPath);
    const tags = /^<([\w.-]+:)?/.exec(xml.slice(root.start))?.[1] ?? "";
    const list = childOf(root, "definedNames");
    const taken = new Set(childrenOf(list, "definedName").map(({ attributes }) => attributes.name));
    const added = names
      .filter((name) => !taken.has(PREFIX + name))
      .map((name) => writeXml(`${tags}definedName`, { name: PREFIX + name }, definitionXml(name)))
      .join("");
    if (list && xml[list.contentStart - 2] !== "/") {
      const at = xml.lastIndexOf("<", list.end - 1);
      return xml.slice(0, at) + added + xml.slice(at);
    }
    const before = root.children.filter(({ name }) => BEFORE_NAMES.includes(name)).at(-1);
    const at = before?.end ?? root.contentStart;
    const after = list?.end ?? at;
    return xml.slice(0, at) + writeXml(`${tags}definedNames`, {}, added) + xml.slice(after);
  });
}

/** What stands before the names in a workbook's part. */
const BEFORE_NAMES = ["sheets", "functionGroups", "externalReferences"];

function definitionXml(name: string): string {
  const formula = toFile(lambdaText(lambdas.get(name)!));
  return formula.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}
