import type { Package, Relationship } from "../package";
import {
  missing,
  partAt,
  relationshipsOf,
  relationshipsPath,
  textAt,
  UnreadableFile,
} from "../package";

/**
 * Refuses a workbook that refers to a part which its file does not have, and names the part, whatever it would hold:
 * something of somebody's sheet is gone, and a program that went on would save the workbook without it. What hangs on
 * the file and not on the workbook, its title and author, is not asked for.
 */
export function refuseAbsentParts(file: Package, workbookPath: string): void {
  const has = (path: string) => partAt(file, path) !== undefined;
  const reached = new Set([workbookPath]);
  // The set grows while it is gone through.
  for (const path of reached) {
    const referred = has(relationshipsPath(path)) ? needed(file, path) : [];
    for (const { target } of referred) if (has(target)) reached.add(target);
    const absent = referred.filter(({ target }) => !has(target));
    const drawn = absent.some(isDrawing) ? drawnIn(file, path) : new Set();
    const missed = absent.find((reference) => !isDrawing(reference) || drawn.has(reference.id));
    if (missed) throw missing(missed.target);
  }
}

/** The parts that a part refers to and that hold something. */
function needed(file: Package, path: string): Relationship[] {
  try {
    return relationshipsOf(file, path).filter(
      ({ type, external, target }) => !external && !HOLD_NOTHING.has(type) && !isNothing(target),
    );
  } catch (error) {
    // Whoever needs what this part refers to says what is to be said.
    if (!(error instanceof UnreadableFile)) throw error;
    return [];
  }
}

/**
 * Of these nobody misses anything: how a printer was set up; the order of calculation, which every program finds by
 * itself; an address to go to, which may be a place in the same workbook; and what other programs keep for themselves.
 */
const HOLD_NOTHING: ReadonlySet<string> = new Set([
  "printerSettings",
  "calcChain",
  "hyperlink",
  "customXml",
  "customProperty",
]);

/**
 * What some programs write in place of what was taken away, and Office opens without a word (scanny/python-pptx, issues
 * 206 and 497).
 */
const isNothing = (target: string) => /(?:^|\/)NULL$/.test(target);

/**
 * What is drawn on a sheet the sheet names in its own part, and a reference to a drawing that it does not name is
 * nothing to Excel. R's openxlsx refers from every sheet to drawings and writes only those that there are, by its source.
 */
const isDrawing = ({ type }: Relationship) => type === "drawing" || type === "vmlDrawing";

/** The ids of the references to drawings that a sheet names. */
function drawnIn(file: Package, path: string): Set<string | undefined> {
  const tags = textAt(file, path).matchAll(
    /<(?:[\w.-]+:)?(?:drawing|legacyDrawing|legacyDrawingHF|drawingHF)\s[^<>]*?:id\s*=\s*["']([^"'<>]*)/g,
  );
  return new Set(Array.from(tags, ([, id]) => id));
}
