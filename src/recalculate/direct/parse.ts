import { widthOf } from "../../cells";
import { sheetIn, type Area } from "../../formula/address";
import { areaOfToken, around } from "../../formula/areas";
import { argumentsIn, closingOf } from "../../formula/calls";
import { nameOn } from "../../formula/names";
import { callsOurs } from "../../formula/spelling";
import { resolveTables } from "../../formula/tables";
import { tokensOf, type Token } from "../../formula/tokens";
import { isError, type CellValue } from "../../xlsx/model";
import type { Book, FormulaCell } from "../book";
import { whyNotSheet } from "../../formula/cannotCompute";
import type {
  DirectArgument,
  DirectFormula,
  DirectRead,
  Expression,
  Moves,
  OurCall,
  RangeArgument,
} from "./expression";
import { parseExpression } from "./parseExpression";

/** How deep names may stand for names. */
const DEEPEST = 10;

/**
 * Reads formulas that need no engine: calls of ours on references, literals, arrays of them and names for those, and
 * the simple formulas that are written around such calls. Of all others it gives nothing.
 */
export function cellParser(book: Book): (cell: FormulaCell) => DirectFormula | undefined {
  const sheets = new Map(book.sheets.map(({ name }) => [name.toLowerCase(), name]));

  return ({ text, sheet, row, column, kind }) => {
    const standing = { sheet: sheet.name, row, column };
    const reads: DirectRead[] = [];
    const pieces = piecesOf(text);
    const call = callOf(pieces);
    if (call) return { expression: call, reads };
    // What is one value shows in each cell of an array.
    if (kind === "fixed array") return undefined;
    reads.length = 0;
    const expression = expressionOf(withoutTables(pieces));
    return expression && { expression, reads };

    /** A call of ours and nothing else. */
    function callOf(pieces: readonly Token[]): OurCall | undefined {
      const [name] = pieces;
      if (name?.kind !== "call" || closingBracket(pieces) !== pieces.length - 1) return undefined;
      return ourCall(name.text, pieces.slice(2, -1));
    }

    function ourCall(name: string, inside: readonly Token[]): OurCall | undefined {
      if (!callsOurs(`${name}(`)) return undefined;
      const given: DirectArgument[] = [];
      for (const pieces of inside.length === 0 ? [] : argumentsIn(inside)) {
        const argument = readArgument(withoutTables(pieces)) ?? computed(withoutTables(pieces));
        if (argument === undefined) return undefined;
        given.push(argument);
      }
      return { kind: "ours", id: /[A-Z0-9]+$/i.exec(name)![0].toUpperCase(), given };
    }

    function computed(pieces: readonly Token[]): DirectArgument | undefined {
      const expression = expressionOf(pieces);
      // A call of ours may come to several cells, and a cell in brackets is that cell.
      const isValue = expression && expression.kind !== "ours" && expression.kind !== "cell";
      return isValue ? { kind: "computed", expression } : undefined;
    }

    function expressionOf(pieces: readonly Token[]): Expression | undefined {
      return parseExpression(pieces, { readCall: ourCall, readOperand });
    }

    function readOperand(pieces: readonly Token[]): Expression | undefined {
      const argument = readArgument(pieces);
      if (argument?.kind === "value") {
        const { value } = argument;
        return value === null || isError(value) ? undefined : { kind: "value", value };
      }
      if (argument?.kind !== "range" || argument.whole) return undefined;
      const { sheet, area, moves } = argument;
      const { startRow, startColumn, endRow, endColumn } = area;
      if (startRow !== endRow || startColumn !== endColumn) return undefined;
      // One that grows as it is filled down is no cell, whatever its first row looks like.
      if (moves === "last" || moves === "in places") return undefined;
      return { kind: "cell", sheet, row: startRow, column: startColumn, moves: moves === "both" };
    }

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
      const range = readRange(pieces);
      if (range) reads.push(range);
      return range ?? readName(pieces, depth);
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
        const moves = whole
          ? movesOfLines(first.text)
          : movesOf(first.text, first.text, start, start);
        return { kind: "range", sheet: on, area: start, ...(whole && { whole }), asText, moves };
      }
      const end = last && areaOfToken(last);
      const isPair = rest.length === 3 && colon?.text === ":" && first.kind === "cell";
      if (!isPair || !end || last.kind !== "cell") return undefined;
      const moves = movesOf(first.text, last.text, start, end);
      return { kind: "range", sheet: on, area: around(start, end), asText, moves };
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

/** Which rows of a range move that is written by its corners. */
function movesOf(
  first: string,
  last: string,
  { startRow: from }: Area,
  { startRow: to }: Area,
): Moves {
  const [isFirst, isLast] = [!/\$\d/.test(first), !/\$\d/.test(last)];
  if (isFirst === isLast) return isFirst ? "both" : "none";
  const isLower = isFirst ? from >= to : to >= from;
  return isLower ? "last" : "in places";
}

/** The same of whole columns or rows, as they are written. */
const movesOfLines = (text: string): Moves => (/(?:^|:)\d/.test(text) ? "in places" : "none");

const piecesOf = (formula: string) => tokensOf(formula).filter(({ kind }) => kind !== "space");

/** Where the bracket of the call that starts these pieces is closed. */
const closingBracket = (pieces: readonly Token[]) =>
  closingOf(
    pieces.map(({ text }) => text),
    1,
  );

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
