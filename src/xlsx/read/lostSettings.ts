import type { Package } from "../package";
import { findWorkbook, partAt, textAt } from "../package";
import { listSheets } from "./sheets";

/**
 * Signs, in a worksheet's part, of what somebody set and the spreadsheet here does not keep. None goes past the next
 * "<": from each of a thousand beginnings in a comment to the end of the file would be a long way.
 */
const OF_SHEETS: readonly (readonly [sign: RegExp, loss: string])[] = [
  [/<(?:\w+:)?pageSetup\b[^<>]*\b(?:orientation="landscape"|scale="(?!100"))/, "page setup"],
  [/<(?:\w+:)?(?:rowBreaks|colBreaks)\b/, "page breaks"],
  [/<(?:\w+:)?(?:odd|even|first)(?:Header|Footer)\b[^<>/]*>[^<]/, "headers and footers"],
  [/\bzoomScale="(?!100")/, "zoom"],
  [/\boutlineLevel="[1-9]/, "groups of rows and columns"],
];

/** The margins that programs give a page on their own: the old and the newer ones. */
const USUAL_MARGINS = [
  { left: 0.7, right: 0.7, top: 0.75, bottom: 0.75 },
  { left: 0.75, right: 0.75, top: 1, bottom: 1 },
  // Those that we write.
  { left: 0.5, right: 0.5, top: 0.6, bottom: 0.6 },
];

/** What settings of a workbook's file a copy saved here would not have, in a person's words. */
export function lostSettings(file: Package): string[] {
  const ofEach = listSheets(file).flatMap(({ path }) => {
    const xml = textAt(file, path);
    const lost = OF_SHEETS.filter(([sign]) => sign.test(xml)).map(([, loss]) => loss);
    return hasOwnMargins(xml) ? [...lost, "margins"] : lost;
  });
  const workbook = textAt(file, findWorkbook(file));
  return [
    ...ofEach,
    ...(/\bstate="veryHidden"/.test(workbook) ? ["hiding of sheets that only a macro shows"] : []),
    ...(/_xlnm\.Print_(?:Area|Titles)/.test(workbook) ? ["print areas and titles"] : []),
    ...(hasAuthor(file) ? ["author's name"] : []),
  ];
}

function hasOwnMargins(xml: string): boolean {
  const [margins] = /<(?:\w+:)?pageMargins\b[^<>]*>/.exec(xml) ?? [];
  if (margins === undefined) return false;
  const side = (name: string) => Number(new RegExp(`\\b${name}="([^"]*)"`).exec(margins)?.[1]);
  return !USUAL_MARGINS.some((usual) =>
    Object.entries(usual).every(([name, inches]) => Math.abs(side(name) - inches) < 0.01),
  );
}

function hasAuthor(file: Package): boolean {
  const path = "docProps/core.xml";
  return (
    partAt(file, path) !== undefined && /<dc:creator>(?!Unknown<)[^<]/.test(textAt(file, path))
  );
}
