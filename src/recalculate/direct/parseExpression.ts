import type { Token } from "../../formula/tokens";
import {
  COMPARISONS,
  WRAPPERS,
  type Expression,
  type Operator,
  type WrapperName,
} from "./expression";

/** What only the workbook around a formula can tell. */
export interface Reader {
  /** A call of ours, by its name and the pieces between its brackets; nothing where it is none. */
  readCall(name: string, inside: readonly Token[]): Expression | undefined;
  /** What stands for one cell or one value; nothing where it does not. */
  readOperand(pieces: readonly Token[]): Expression | undefined;
}

/** From those that bind least to those that bind most. */
const LEVELS: readonly (readonly Operator[])[] = [COMPARISONS, ["&"], ["+", "-"], ["*", "/"]];

/** More pieces than anybody types; whoever goes through an expression calls himself for its parts. */
const MOST_PIECES = 500;

/** Thrown and caught within this file: the formula has something in it that is the engine's. */
class NotHere extends Error {}

/**
 * Reads a formula's pieces, without the spaces, as one expression; nothing where there is anything in it that the
 * engine alone can follow.
 */
export function parseExpression(
  pieces: readonly Token[],
  { readCall, readOperand }: Reader,
): Expression | undefined {
  if (pieces.length > MOST_PIECES) return undefined;
  let at = 0;
  try {
    const whole = readLevel(0);
    return at === pieces.length ? whole : undefined;
  } catch (error) {
    if (error instanceof NotHere) return undefined;
    throw error;
  }

  function readLevel(level: number): Expression {
    if (level === LEVELS.length) return readPower();
    let left = readLevel(level + 1);
    for (let count = 1; ; count++) {
      const operator = LEVELS[level]?.find((each) => each === pieces[at]?.text);
      if (operator === undefined || pieces[at]?.kind !== "operator") return left;
      // A second comparison would compare a truth value.
      if (level === 0 && count > 1) throw new NotHere();
      at++;
      left = { kind: "operator", operator, left, right: readLevel(level + 1) };
    }
  }

  /** Programs differ over -2^2 and 2^3^2, which nobody writes in a log. */
  function readPower(): Expression {
    const left = readSigned();
    if (pieces[at]?.text !== "^") return left;
    at++;
    const right = readSigned();
    if (left.kind === "negative" || pieces[at]?.text === "^") throw new NotHere();
    return { kind: "operator", operator: "^", left, right };
  }

  function readSigned(): Expression {
    const sign = pieces[at]?.text;
    if (sign === "+" || sign === "-") {
      at++;
      const of = readSigned();
      if (sign === "-") return { kind: "negative", of };
      // A plus leaves what it stands before, but of a reference it makes a value.
      if (of.kind === "cell") throw new NotHere();
      return of;
    }
    let operand = readOne();
    for (; pieces[at]?.text === "%"; at++) operand = { kind: "percent", of: operand };
    return operand;
  }

  function readOne(): Expression {
    const piece = pieces[at];
    if (piece === undefined) throw new NotHere();
    if (piece.kind === "call") return readFunction(piece.text);
    if (piece.text === "(") {
      at++;
      const inside = readLevel(0);
      expect(")");
      return inside;
    }
    const length = piece.kind === "sheet" ? 2 : 1;
    const operand = readOperand(pieces.slice(at, at + length));
    at += length;
    if (operand === undefined || pieces[at]?.text === ":") throw new NotHere();
    return operand;
  }

  function readFunction(written: string): Expression {
    const start = at + 2;
    const inside = pieces.slice(start, closingFrom(at + 1));
    const ours = readCall(written, inside);
    if (ours) {
      at = start + inside.length + 1;
      return ours;
    }
    const name = written.replace(/^_xlfn\./i, "").toUpperCase();
    if (!isWrapper(name)) throw new NotHere();
    at = start;
    const given = [readLevel(0)];
    while (pieces[at]?.text === ",") {
      at++;
      given.push(readLevel(0));
    }
    expect(")");
    const [least, most] = WRAPPERS[name];
    if (given.length < least || given.length > most) throw new NotHere();
    return { kind: "wrapper", name, given };
  }

  function closingFrom(open: number): number {
    let depth = 0;
    for (let index = open; index < pieces.length; index++) {
      if (pieces[index]?.text === "(") depth++;
      if (pieces[index]?.text === ")") depth--;
      if (depth === 0) return index;
    }
    throw new NotHere();
  }

  function expect(text: string): void {
    if (pieces[at]?.text !== text) throw new NotHere();
    at++;
  }
}

const isWrapper = (name: string): name is WrapperName => Object.hasOwn(WRAPPERS, name);
