/**
 * The plain notation of worked examples: numbers, names, + - * / ^, comparisons (1 or 0), columns {1; 2; 3}, grids
 * {1, 2; 3, 4}, functions, a place of a column or grid y[2] or y[2, 3], and our own cell functions, SPARE.E1RM(100, 5).
 * What is done to a column is done to each of its values.
 */
import { CellError, onlyCell } from "../../cells";
import { implementationOf } from "../../functions/implementationOf";
import { implementations } from "../../functions/implementations";
import { builtIns } from "./builtIns";
import { coreSteps } from "./coreSteps";
import {
  cellsOf,
  each,
  isColumn,
  isGrid,
  numberOf,
  together,
  type Cell,
  type Value,
} from "./values";

export type Names = ReadonlyMap<string, Value>;

const TOKEN =
  /\s*(?:(\d+\.?\d*(?:e[-+]?\d+)?)|"([^"]*)"|(SPARE\.[A-Z0-9]+|[A-Za-z]\w*)|([<>]=|[-+*/^(),;{}[\]<>]))/y;

interface Token {
  readonly kind: "number" | "text" | "name" | "sign";
  readonly text: string;
}

function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  TOKEN.lastIndex = 0;
  while (text.slice(TOKEN.lastIndex).trim() !== "") {
    const start = TOKEN.lastIndex;
    const found = TOKEN.exec(text);
    if (!found) throw new Error(`"${text}" cannot be read from "${text.slice(start)}"`);
    const [, number, quoted, name, sign] = found;
    if (number !== undefined) tokens.push({ kind: "number", text: number });
    else if (quoted !== undefined) tokens.push({ kind: "text", text: quoted });
    else if (name !== undefined) tokens.push({ kind: "name", text: name });
    else tokens.push({ kind: "sign", text: sign ?? "" });
  }
  return tokens;
}

/** What an expression comes to, given what its names stand for. */
export function valueOf(text: string, names: Names): Value {
  const tokens = tokensOf(text);
  let at = 0;
  const sign = () => (tokens[at]?.kind === "sign" ? tokens[at]?.text : undefined);
  const take = (...wanted: string[]) => {
    const found = sign();
    if (found === undefined || !wanted.includes(found)) return undefined;
    at++;
    return found;
  };
  const expect = (wanted: string) => {
    if (take(wanted) === undefined) throw new Error(`"${text}" lacks a ${wanted}`);
  };

  const joined = (next: () => Value, joins: Readonly<Record<string, Join>>) => {
    let value = next();
    for (let found = take(...Object.keys(joins)); found; found = take(...Object.keys(joins))) {
      value = together(value, next(), joins[found]!);
    }
    return value;
  };
  const comparison = (): Value => joined(terms, COMPARISONS);
  const terms = (): Value => joined(factors, TERMS);
  const factors = (): Value => joined(signed, FACTORS);
  const signed = (): Value => (take("-") ? each(signed(), (number) => -number) : power());
  const power = (): Value => {
    const base = placed();
    return take("^") ? together(base, signed(), (a, b) => a ** b) : base;
  };
  const placed = (): Value => {
    const value = operand();
    if (!take("[")) return value;
    const row = numberOf(comparison());
    const column = take(",") ? numberOf(comparison()) : undefined;
    expect("]");
    return placeOf(value, row, column);
  };
  const operand = (): Value => {
    if (take("(")) {
      const value = comparison();
      expect(")");
      return value;
    }
    if (take("{")) return literal();
    const token = tokens[at++];
    if (token?.kind === "number") return Number(token.text);
    if (token?.kind === "text") return token.text;
    if (token?.kind !== "name") throw new Error(`"${text}" ends too early`);
    if (take("(")) return call(token.text, argumentsOf());
    const value = names.get(token.text);
    if (value === undefined) throw new Error(`"${text}": nothing is called ${token.text}`);
    return value;
  };
  const argumentsOf = (): Value[] => {
    const given: Value[] = [];
    if (take(")")) return given;
    do given.push(sign() === "," || sign() === ")" ? null : comparison());
    while (take(","));
    expect(")");
    return given;
  };
  const literal = (): Value => {
    const rows: Cell[][] = [[]];
    do {
      const cell = sign() === "," || sign() === ";" ? null : (comparison() as Cell);
      rows.at(-1)!.push(cell);
      if (sign() === ";") rows.push([]);
    } while (take(",", ";"));
    expect("}");
    return rows.every(({ length }) => length === 1) ? rows.flat() : { rows };
  };

  const value = comparison();
  if (at < tokens.length) throw new Error(`"${text}" goes on after its end`);
  return value;
}

type Join = (a: number, b: number) => number;

const COMPARISONS: Readonly<Record<string, Join>> = {
  ">=": (a, b) => Number(a >= b),
  "<=": (a, b) => Number(a <= b),
  ">": (a, b) => Number(a > b),
  "<": (a, b) => Number(a < b),
};
const TERMS: Readonly<Record<string, Join>> = { "+": (a, b) => a + b, "-": (a, b) => a - b };
const FACTORS: Readonly<Record<string, Join>> = { "*": (a, b) => a * b, "/": (a, b) => a / b };

function placeOf(value: Value, row: number, column: number | undefined): Value {
  const rows = isGrid(value) ? value.rows : cellsOf(value).map((cell) => [cell]);
  const cell = rows[row - 1]?.[(column ?? 1) - 1];
  if (cell === undefined) throw new Error(`there is no place ${row}, ${column ?? 1}`);
  return cell;
}

function call(name: string, given: readonly Value[]): Value {
  if (name.startsWith("SPARE.")) return cellFunction(name.slice("SPARE.".length), given);
  const builtIn = builtIns[name] ?? coreSteps[name];
  if (!builtIn) throw new Error(`there is no function ${name}`);
  return builtIn(...given);
}

/** One of our own functions, called as a host calls it. */
function cellFunction(id: string, given: readonly Value[]): Value {
  const result = implementationOf(implementations, id)(...given.map(asRange));
  const rows = result.map((row) => row.map(readContent));
  const only = onlyCell(rows);
  if (only !== undefined) return only;
  return rows.every(({ length }) => length === 1) ? rows.flat() : { rows };
}

function asRange(value: Value): unknown {
  if (isGrid(value)) return value.rows;
  return isColumn(value) ? value.map((cell) => [cell]) : value;
}

function readContent(content: unknown): Cell {
  if (content instanceof CellError) throw new Error(`${content.code} ${content.message}`);
  return content as Cell;
}
