import { sheetIn, type Area } from "../../formula/address";
import { areaOfToken, around } from "../../formula/areas";
import { nameOn, type Name } from "../../formula/names";
import { plainFormula } from "../../formula/plain";
import { writeOutSheets } from "../../formula/sheetRanges";
import type { Standing } from "../../formula/tables";
import { tokensOf, type Token } from "../../formula/tokens";
import type { Book, FormulaCell } from "../book";

/** An area of a sheet, which is known by its name. */
export interface SheetArea {
  readonly sheet: string;
  readonly area: Area;
}

/** What a formula reads. */
export interface Reads {
  readonly areas: readonly SheetArea[];
  /** Whether it may read other cells as well, which it does not name. */
  readonly anywhere: boolean;
}

/** Functions that read cells which their formula does not name. */
const READS_ANYWHERE = new Set(["INDIRECT", "OFFSET"]);

/** Says what a formula reads, by itself and through names. */
export function readsFinder(book: Book): (cell: FormulaCell) => Reads {
  const order = book.sheets.map(({ name }) => name);
  const sheets = new Map(order.map((name) => [name.toLowerCase(), name]));
  // Of 20,000 names in a chain each is asked for once, so none is looked for among all.
  const names = new Map<string, Name[]>();
  for (const name of book.names) {
    const key = name.name.toLowerCase();
    const same = names.get(key);
    if (same) same.push(name);
    else names.set(key, [name]);
  }

  return ({ text, sheet, row, column }) => {
    const tokens = piecesOf(text, { sheet: sheet.name, row, column });
    return {
      areas: areasIn(tokens, sheet.name, sheets),
      anywhere: tokens.some(
        ({ kind, text }) => kind === "call" && READS_ANYWHERE.has(text.toUpperCase()),
      ),
    };
  };

  /** The pieces of a formula, and those of every name that it reaches, each name's once. */
  function piecesOf(text: string, standing: Standing): readonly Token[] {
    const own = tokensOf(writeOutSheets(plainFormula(text, book.tables, standing), order));
    if (names.size === 0) return own;
    const reached = new Set<string>();
    const found: Token[] = [];
    const waiting = [own];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      for (const token of next) {
        found.push(token);
        const key = token.text.toLowerCase();
        const isName = token.kind === "name" || token.kind === "call";
        const meanings = isName ? names.get(key) : undefined;
        if (!meanings || reached.has(key)) continue;
        reached.add(key);
        const nowhere = { sheet: standing.sheet, row: -1, column: -1 };
        const meaning = nameOn(standing.sheet, key, meanings)?.text ?? "";
        waiting.push(tokensOf(writeOutSheets(plainFormula(meaning, book.tables, nowhere), order)));
      }
      // What follows stands by itself.
      found.push({ kind: "operator", text: "," });
    }
    return found;
  }
}

/** The areas that a formula's pieces name, each with its sheet. */
function areasIn(
  tokens: readonly Token[],
  ownSheet: string,
  sheets: ReadonlyMap<string, string>,
): SheetArea[] {
  const areas: SheetArea[] = [];
  tokens.forEach((token, index) => {
    const area = areaOfToken(token);
    if (!area) return;
    const before = tokens[index - 1];
    const start = before?.text === ":" ? areas.pop() : undefined;
    if (start) {
      areas.push({ sheet: start.sheet, area: around(start.area, area) });
      return;
    }
    const named =
      before?.kind === "sheet" ? sheets.get(sheetIn(before.text).toLowerCase()) : ownSheet;
    areas.push({ sheet: named ?? "", area });
  });
  return areas;
}
