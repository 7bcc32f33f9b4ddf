import { widthOf } from "../../cells";
import { sheetIn, type Area } from "../../formula/address";
import { areaOfToken, around } from "../../formula/areas";
import { argumentsIn, closingOf } from "../../formula/calls";
import { nameOn } from "../../formula/names";
import { callsOurs } from "../../formula/spelling";
import { resolveTables } from "../../formula/tables";
import { tokensOf, type Token } from "../../formula/tokens";
import type { CellValue } from "../../xlsx/model";
import type { Book, FormulaCell } from "../book";
import { whyNotSheet } from "../../formula/cannotCompute";

/** An argument whose value can be told without computing anything. */
export type DirectArgument =
  | { readonly kind: "omitted" }
  | { readonly kind: "value"; readonly value: CellValue }
  | { readonly kind: "array"; readonly rows: readonly (readonly CellValue[])[] }
  | RangeArgument;

export interface RangeArgument {
  readonly kind: "range";
  /** The sheet's name; nothing where no sheet is called so. */
  readonly sheet: string | undefined;
  readonly area: Area;
  /** Whether these are whole columns or rows, which end where the sheet's contents do. */
  readonly whole?: "columns" | "rows";
  /** Whether each cell is made a text, `D2:D9&""`. */
  readonly asText: boolean;
}

/** A formula that is nothing but a call of one of our functions. */
export interface DirectCall {
  readonly id: string;
  readonly given: readonly DirectArgument[];
}

/** How deep names may stand for names. */
const DEEPEST = 10;

/**
 * Reads formulas that are nothing but a call of ours, with references, literals, arrays of them and
 * names for those as arguments; of all others it gives nothing.
 */
export function callParser(book: Book): (cell: FormulaCell) => DirectCall | undefined {
  const sheets = new Map(book.sheets.map(({ name }) => [name.toLowerCase(), name]));

  return ({ text, sheet, row, column }) => {
    const standing = { sheet: sheet.name, row, column };
    const tokens = piecesOf(text);
    const [call] = tokens;
    if (call?.kind !== "call" || !callsOurs(`${call.text}(`)) return undefined;
    const end = closingOf(
      tokens.map(({ text }) => text),
      1,
    );
    if (end !== tokens.length - 1) return undefined;
    const inside = tokens.slice(2, end);
    const given: DirectArgument[] = [];
    for (const pieces of inside.length === 0 ? [] : argumentsIn(inside)) {
      const argument = readArgument(withoutTables(pieces));
      if (argument === undefined) return undefined;
      given.push(argument);
    }
    return { id: /[A-Z0-9]+$/i.exec(call.text)![0].toUpperCase(), given };

    /** The pieces with references into tables as the ranges they are. */
    function withoutTables(pieces: readonly Token[]): readonly Token[] {
      if (book.tables.length === 0) return pieces;
      return pieces.flatMap((piece) => {
        const mayBeTable = piece.kind === "structured" || piece.kind === "name";
        if (!mayBeTable) return piece;
        const range = resolveTables(piece.text, book.tables, standing);
        return range === piece.text ? piece : piecesOf(range);
      });
    }

    function readArgument(pieces: readonly Token[], depth = 0): DirectArgument | undefined {
      const [first] = pieces;
      if (!first) return { kind: "omitted" };
      if (first.text === "{") return readArray(pieces);
      const value = readLiteral(pieces);
      if (value !== undefined) return { kind: "value", value };
      return readRange(pieces) ?? readName(pieces, depth);
    }

    function readRange(pieces: readonly Token[]): RangeArgument | undefined {
      const asText = pieces.at(-2)?.text === "&" && pieces.at(-1)?.text === '""';
      const rest = asText ? pieces.slice(0, -2) : [...pieces];
      const named = rest[0]?.kind === "sheet" ? rest.shift()! : undefined;
      if (named && whyNotSheet(named.text) !== undefined) return undefined;
      const [first, colon, last] = rest;
      const start = first && areaOfToken(first);
      if (!start) return undefined;
      const on = named ? sheets.get(sheetIn(named.text).toLowerCase()) : sheet.name;
      if (rest.length === 1) {
        const whole = first.kind === "columns" || first.kind === "rows" ? first.kind : undefined;
        // A million cells of text are not what anybody means.
        if (whole && asText) return undefined;
        return { kind: "range", sheet: on, area: start, ...(whole && { whole }), asText };
      }
      const end = last && areaOfToken(last);
      const isPair = rest.length === 3 && colon?.text === ":" && first.kind === "cell";
      if (!isPair || !end || last.kind !== "cell") return undefined;
      return { kind: "range", sheet: on, area: around(start, end), asText };
    }

    /** A name for a range or a value is that; cells that are named relative to the formula's own are not. */
    function readName(pieces: readonly Token[], depth: number): DirectArgument | undefined {
      const [name] = pieces;
      if (pieces.length !== 1 || name?.kind !== "name" || depth === DEEPEST) return undefined;
      const meaning = nameOn(sheet.name, name.text, book.names);
      if (!meaning) return undefined;
      const inside = withoutTables(piecesOf(meaning.text));
      const fixed = inside.every(
        (piece, index) =>
          areaOfToken(piece) === undefined ||
          (/^(?:\$[A-Z]+\$\d+|\$[A-Z]+:\$[A-Z]+|\$\d+:\$\d+)$/i.test(piece.text) &&
            (inside[index - 1]?.kind === "sheet" || inside[index - 1]?.text === ":")),
      );
      return fixed && inside.length > 0 ? readArgument(inside, depth + 1) : undefined;
    }
  };
}

const piecesOf = (formula: string) => tokensOf(formula).filter(({ kind }) => kind !== "space");

/** A number, a text or a truth value that is written out. */
function readLiteral(pieces: readonly Token[]): CellValue | undefined {
  const [first, second] = pieces;
  if (!first || pieces.length > 2) return undefined;
  if (!second) {
    if (first.kind === "text") return first.text.slice(1, -1).replaceAll('""', '"');
    if (first.kind === "name" && /^(?:TRUE|FALSE)$/i.test(first.text)) {
      return first.text.toUpperCase() === "TRUE";
    }
    return first.kind === "number" ? Number(first.text) : undefined;
  }
  if (second.kind === "number" && first.text === "-") return -Number(second.text);
  if (second.kind === "number" && first.text === "+") return Number(second.text);
  return first.kind === "number" && second.text === "%" ? Number(first.text) / 100 : undefined;
}

/** "{1,2;3,4}" are two rows of two. */
function readArray(pieces: readonly Token[]): DirectArgument | undefined {
  if (pieces.at(-1)?.text !== "}") return undefined;
  let row: CellValue[] = [];
  const rows = [row];
  let literal: Token[] = [];
  for (const piece of pieces.slice(1)) {
    if (![",", ";", "}"].includes(piece.text)) {
      literal.push(piece);
      continue;
    }
    const value = literal.length > 0 ? readLiteral(literal) : undefined;
    if (value === undefined) return undefined;
    row.push(value);
    literal = [];
    if (piece.text !== ";") continue;
    row = [];
    rows.push(row);
  }
  const isGrid = rows.every(({ length }) => length === widthOf(rows));
  return isGrid ? { kind: "array", rows } : undefined;
}
