import { parseCell } from "../../../../src/formula/address";
import { tokensOf, type Token } from "../../../../src/formula/tokens";
import { cellAt, elementAt, named } from "../../../present";
import { functions, operators, type Sheet } from "./functions";
import {
  Matrix,
  overRanges,
  Problem,
  truthIn,
  workedOut,
  type Callable,
  type Plain,
  type Scalar,
  type Value,
} from "./values";

/*
 * A small spreadsheet: it knows LET, LAMBDA and what the formulas of a copy are made of, computes over ranges as
 * modern Excel does, and shares nothing with the page's engine but how formulas are taken apart.
 */

/** What the names in a formula stand for, the innermost first. */
interface Scope {
  get(name: string): Value | undefined;
}

const within = (scope: Scope, name: string, value: Value): Scope => ({
  get: (wanted) => (wanted === name ? value : scope.get(wanted)),
});

type Code = (scope: Scope) => Value;

/** A sheet for references without a sheet's name. */
export type Cells = readonly (readonly Scalar[])[];

/** A workbook of names; each is worked out from those before it and itself. */
export function spreadsheet(names: Iterable<readonly [string, string]>) {
  const known = new Map<string, Value>();
  for (const [name, formula] of names) known.set(name.toLowerCase(), compile(formula, [])(known));
  return {
    /** Calls a name with values. */
    call: (name: string, ...given: Value[]) =>
      (known.get(name.toLowerCase()) as Callable)(...given) as Plain,
    /** Works out a formula on a sheet. */
    evaluate: (formula: string, cells: Cells = []) => compile(formula, cells)(known) as Plain,
  };
}

const levels: readonly (readonly string[])[] = [
  ["=", "<>", "<", ">", "<=", ">="],
  ["&"],
  ["+", "-"],
  ["*", "/"],
  ["^"],
];

function compile(formula: string, cells: Cells): Code {
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  let next = 0;
  const peek = () => tokens[next]?.text;
  const code = binary(0);
  if (next < tokens.length) throw new Error(`"${peek()}" is out of place in ${formula}`);
  return code;

  function binary(level: number): Code {
    const signs = levels[level];
    if (signs === undefined) return unary();
    let left = binary(level + 1);
    for (let sign = peek(); sign !== undefined && signs.includes(sign); sign = peek()) {
      next++;
      const operator = named<Sheet>(operators, sign);
      const [one, other] = [left, binary(level + 1)];
      left = (scope) => operator(one(scope), other(scope));
    }
    return left;
  }

  function unary(): Code {
    if (peek() !== "-") return percent();
    next++;
    const inner = unary();
    return (scope) => operators.negative(inner(scope));
  }

  function percent(): Code {
    const inner = primary();
    if (peek() !== "%") return inner;
    next++;
    return (scope) => operators["/"](inner(scope), 100);
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
    if (kind === "name" && !/^(true|false)$/i.test(text)) {
      const key = text.toLowerCase();
      return (scope) => scope.get(key) ?? new Problem("#NAME?");
    }
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

  /** What stands between a call's brackets; an argument that is left out is a blank. */
  function given(): { code: Code; name: string }[] {
    expectText("(");
    const found: { code: Code; name: string }[] = [];
    if (peek() === ")") {
      next++;
      return found;
    }
    do {
      const name = (peek() ?? "").toLowerCase();
      const isEmpty = peek() === "," || peek() === ")";
      found.push({ name, code: isEmpty ? () => null : binary(0) });
    } while (take().text === ",");
    return found;
  }

  function call(text: string): Code {
    const parts = given();
    const codes = parts.map(({ code }) => code);
    switch (text.toUpperCase()) {
      case "LET":
        return (scope) => {
          let inner = scope;
          for (let at = 0; at + 1 < parts.length; at += 2) {
            inner = within(inner, elementAt(parts, at).name, elementAt(codes, at + 1)(inner));
          }
          return codes.at(-1)!(inner);
        };
      case "LAMBDA":
        return (scope) =>
          (...values) => {
            const inner = parts
              .slice(0, -1)
              .reduce((outer, { name }, at) => within(outer, name, values[at] ?? null), scope);
            return codes.at(-1)!(inner);
          };
      case "IF": {
        const [test, yes, no] = [elementAt(codes, 0), elementAt(codes, 1), codes[2]];
        return (scope) => choose(test(scope) as Plain, yes, no ?? (() => false), scope);
      }
      default: {
        const key = text.toLowerCase();
        const known = functions[text.toUpperCase()];
        return (scope) => {
          const named = scope.get(key);
          const values = codes.map((code) => code(scope));
          if (typeof named === "function") return named(...values);
          if (!known) throw new Error(`${text} is not known here`);
          return known(...values);
        };
      }
    }
  }
}

/** One condition chooses a branch as it stands; a range of them chooses cell by cell. */
function choose(condition: Plain, yes: Code, no: Code, scope: Scope): Value {
  const isRange = condition instanceof Matrix && condition.rows * condition.columns > 1;
  if (!isRange) {
    const single = condition instanceof Matrix ? cellAt(condition.cells, 0, 0) : condition;
    const truth = truthIn(single);
    return truth instanceof Problem ? truth : truth ? yes(scope) : no(scope);
  }
  return overRanges([condition, yes(scope) as Plain, no(scope) as Plain], (test, one, other) => {
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
