import { quoteSheet, sheetIn } from "./address";
import { mapParts, piecesOf, textOf, trimmed, type Piece } from "./pieces";

/** The functions that take the same cells of several sheets, and to which these are so many more arguments. */
const TAKES_SHEETS = new Set(
  (
    "AVERAGE AVERAGEA COUNT COUNTA MAX MAXA MIN MINA PRODUCT STDEV STDEV.P STDEV.S STDEVA STDEVP " +
    "STDEVPA SUM SUMSQ VAR VAR.P VAR.S VARA VARP VARPA"
  ).split(" "),
);

/**
 * Writes out a reference to the same cells of several sheets: `SUM(W1:W3!B2)` is `SUM(W1!B2,W2!B2,W3!B2)`, for the
 * sheets that lie between the two in the workbook, whatever they are called. Where the function takes no such list,
 * or a sheet is not there, the reference stays as it is.
 */
export function writeOutSheets(formula: string, sheets: readonly string[]): string {
  if (!/:[^!]*!/.test(formula)) return formula;
  return textOf(
    mapParts(piecesOf(formula), (part, { call }) => {
      const names = call && TAKES_SHEETS.has(call.toUpperCase()) && namesIn(part, sheets);
      if (!names) return part;
      const cells = textOf(trimmed(part).slice(1));
      return piecesOf(names.map((name) => `${quoteSheet(name)}!${cells}`).join(","));
    }),
  );
}

/** The sheets that an argument reads, if it is nothing but cells of several. */
function namesIn(part: readonly Piece[], sheets: readonly string[]): string[] | undefined {
  const [sheet, ...cells] = trimmed(part);
  if (sheet?.kind !== "sheet" || !areCells(cells)) return undefined;
  const ends = endsOf(sheet.text)?.map((name) =>
    sheets.findIndex((each) => each.toLowerCase() === name.toLowerCase()),
  );
  if (!ends || ends.includes(-1)) return undefined;
  return sheets.slice(Math.min(...ends), Math.max(...ends) + 1);
}

function areCells(pieces: readonly Piece[]): boolean {
  const kinds = pieces.map((piece) => (piece.kind === "operator" ? piece.text : piece.kind));
  return ["cell", "cell : cell", "columns", "rows"].includes(kinds.join(" "));
}

/** `W1:W3!` and `'Week 1:Week 3'!` name a first and a last sheet. */
export function endsOf(sheet: string): readonly [string, string] | undefined {
  const inside = sheetIn(sheet);
  const [first, last, ...more] = inside.split(":");
  if (first === undefined || last === undefined || more.length > 0) return undefined;
  return inside.includes("[") ? undefined : [first, last];
}
