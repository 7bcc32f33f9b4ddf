import { parseCell } from "../../../../src/formula/address";
import { tokensOf, type Token } from "../../../../src/formula/tokens";
import { cellAt, elementAt, named } from "../../../present";
import { functions, operators, type Sheet } from "./functions";
import { Places, type Code, type Frame } from "./places";
import {
  Matrix,
  overRanges,
  Problem,
  truthIn,
  workedOut,
  type Plain,
  type Scalar,
  type Value,
} from "./values";

/*
 * A small spreadsheet: it knows LET, LAMBDA and what the formulas of a copy are made of, computes over ranges as
 * modern Excel does, and shares nothing with the page's engine but how formulas are taken apart.
 */

/** A sheet for references without a sheet's name. */
export type Cells = readonly (readonly Scalar[])[];

/** A workbook of names; each is worked out from those before it and itself. */
export function spreadsheet(names: Iterable<readonly [string, string]>) {
  const known = new Map<string, Value>();
  for (const [name, formula] of names) known.set(name.toLowerCase(), evaluate(formula, [], known));
  return {
    /** Works out a formula on a sheet. */
    evaluate: (formula: string, cells: Cells = []) => evaluate(formula, cells, known) as Plain,
  };
}

const levels: readonly (readonly string[])[] = [
  ["=", "<>", "<", ">", "<=", ">="],
  ["&"],
  ["+", "-"],
  ["*", "/"],
  ["^"],
];

function evaluate(formula: string, cells: Cells, known: ReadonlyMap<string, Value>): Value {
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  let next = 0;
  let places = new Places();
  const peek = () => tokens[next]?.text;
  const code = binary(0);
  if (next < tokens.length) throw new Error(`"${peek()}" is out of place in ${formula}`);
  return places.run(code);

  function binary(level: number): Code {
    const signs = levels[level];
    if (signs === undefined) return unary();
    let left = binary(level + 1);
    for (let sign = peek(); sign !== undefined && signs.includes(sign); sign = peek()) {
      next++;
      const operator = named<Sheet>(operators, sign);
      const [one, other] = [left, binary(level + 1)];
      left = (frame) => operator(one(frame), other(frame));
    }
    return left;
  }

  function unary(): Code {
    if (peek() !== "-") return percent();
    next++;
    const inner = unary();
    return (frame) => operators.negative(inner(frame));
  }

  function percent(): Code {
    const inner = primary();
    if (peek() !== "%") return inner;
    next++;
    return (frame) => operators["/"](inner(frame), 100);
  }

  function primary(): Code {
    const { kind, text } = take();
    if (text === "(") {
      const inner = binary(0);
      expectText(")");
      return inner;
    }
    if (text === "{") return array();
    if (kind === "call") return call(text);
    if (kind === "cell") return reference(text);
    if (kind === "name" && !/^(true|false)$/i.test(text)) return nameOf(text.toLowerCase());
    const constant = literal(kind, text);
    return () => constant;
  }

  function take(): Token {
    const token = tokens[next++];
    if (!token) throw new Error(`${formula} ends too early`);
    return token;
  }

  function expectText(text: string): void {
    if (take().text !== text) throw new Error(`"${text}" is missing in ${formula}`);
  }

  function reference(text: string): Code {
    const start = parseCell(text)!;
    const isRange = peek() === ":";
    if (isRange) next++;
    const end = isRange ? parseCell(take().text)! : start;
    const rows = cells
      .slice(start.row, end.row + 1)
      .map((row) => row.slice(start.column, end.column + 1));
    const range = new Matrix(rows, true);
    return () => range;
  }

  function array(): Code {
    const rows: Scalar[][] = [[]];
    for (let token = take(); token.text !== "}"; token = take()) {
      if (token.text === ";") rows.push([]);
      else if (token.text !== ",") rows.at(-1)!.push(literal(token.kind, token.text));
    }
    const constant = workedOut(rows);
    return () => constant;
  }

  function nameOf(name: string): Code {
    return places.reader(name) ?? (() => known.get(name) ?? new Problem("#NAME?"));
  }

  function call(text: string): Code {
    expectText("(");
    const name = text.toUpperCase();
    if (name === "LET") return letNames();
    if (name === "LAMBDA") return lambda();
    const codes = given();
    if (name === "IF") {
      const [test, yes, no] = [elementAt(codes, 0), elementAt(codes, 1), codes[2]];
      return (frame) => choose(test(frame) as Plain, yes, no ?? (() => false), frame);
    }
    return calling(text, codes);
  }

  /** A call of a name, where it stands for a LAMBDA, or of a function. */
  function calling(text: string, codes: readonly Code[]): Code {
    const own = nameOf(text.toLowerCase());
    const builtIn = functions[text.toUpperCase()];
    const [first, second] = codes;
    const lambda = (frame: Frame) => {
      const found = own(frame);
      if (typeof found === "function") return found;
      if (!builtIn) throw new Error(`${text} is not known here`);
      return builtIn;
    };
    if (first && second && codes.length === 2)
      return (frame) => lambda(frame)(first(frame), second(frame));
    if (first && codes.length === 1) return (frame) => lambda(frame)(first(frame));
    return (frame) => lambda(frame)(...codes.map((code) => code(frame)));
  }

  /** What stands between a call's brackets; an argument that is left out is a blank. */
  function given(): Code[] {
    const found: Code[] = [];
    if (peek() === ")") {
      next++;
      return found;
    }
    do {
      const isEmpty = peek() === "," || peek() === ")";
      found.push(isEmpty ? () => null : binary(0));
    } while (take().text === ",");
    return found;
  }

  /** Whether a name stands here of which something follows: a value, or a LAMBDA's next part. */
  function isNameBefore(): boolean {
    return tokens[next + 1]?.text === ",";
  }

  function takeName(): string {
    const name = take().text.toLowerCase();
    expectText(",");
    return name;
  }

  function letNames(): Code {
    let count = 0;
    for (; isNameBefore(); count++) {
      const name = takeName();
      const code = binary(0);
      expectText(",");
      places.add(name, code);
    }
    const result = binary(0);
    expectText(")");
    places.forget(count);
    return result;
  }

  function lambda(): Code {
    const outer = places;
    places = new Places(outer);
    let count = 0;
    for (; isNameBefore(); count++) places.add(takeName());
    const result = places.callable(count, binary(0));
    expectText(")");
    places = outer;
    return result;
  }
}

/** One condition chooses a branch as it stands; a range of them chooses cell by cell. */
function choose(condition: Plain, yes: Code, no: Code, frame: Frame): Value {
  const isRange = condition instanceof Matrix && condition.rows * condition.columns > 1;
  if (!isRange) {
    const single = condition instanceof Matrix ? cellAt(condition.cells, 0, 0) : condition;
    const truth = truthIn(single);
    return truth instanceof Problem ? truth : truth ? yes(frame) : no(frame);
  }
  return overRanges([condition, yes(frame) as Plain, no(frame) as Plain], (test, one, other) => {
    const truth = truthIn(test);
    return truth instanceof Problem ? truth : truth ? one : other;
  });
}

function literal(kind: Token["kind"], text: string): Scalar {
  if (kind === "number") return Number(text);
  if (kind === "text") return text.slice(1, -1).replaceAll('""', '"');
  if (kind === "error") return new Problem(text);
  if (/^(true|false)$/i.test(text)) return /true/i.test(text);
  throw new Error(`"${text}" is not known here`);
}
