import { toFile } from "../../formula/future";
import { childOf, childrenOf, parseXml, writeXml, type Package } from "../../xlsx/package";
import { withChange } from "../../xlsx/patch/editPackage";
import type { Book } from "../book";
import type { Outcome } from "../calculate";
import { copyWith, type Copy } from "./copyWith";
import { judgeOf } from "./judge";
import { lambdas, lambdaText, PREFIX, withHelpers } from "./lambdas";
import { rewriteFormula, whyNotRewritten } from "./rewriteFormula";

/**
 * A copy that goes on calculating without the add-in, in a spreadsheet that knows LAMBDA: our
 * functions that a formula can express become names of the workbook. The others become values, each
 * formula in a note.
 */
export function portableCopy(book: Book, outcomes: readonly Outcome[]): Copy {
  const judge = judgeOf(
    book,
    (formula) => rewriteFormula(formula) ?? { lost: whyNotRewritten(formula) },
  );
  const copy = copyWith(book, outcomes, judge);
  if (copy.calls.size === 0) return copy;
  return { ...copy, file: addNames(copy.file, book.path, withHelpers(copy.calls)) };
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
