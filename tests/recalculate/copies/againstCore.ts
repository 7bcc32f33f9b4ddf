import { expect } from "vitest";
import { CellError } from "../../../src/cells";

import { lambdas, lambdaText, PREFIX } from "../../../src/recalculate/copies/lambdas";
import { rewriteFormula } from "../../../src/recalculate/copies/rewriteFormula";
import { cellAddress } from "../../../src/formula/address";
import { call } from "../../functions/catalogue";
import { elementAt, named } from "../../present";
import { randomStream, seed } from "../../random";
import { draws, type Drawn } from "./draws";
import { spreadsheet } from "./spreadsheet/evaluate";
import { Matrix, Problem, type Plain, type Scalar } from "./spreadsheet/values";

/*
 * A function of a copy against the add-in's, over random calls: cells and ranges of every kind, arguments
 * left out, blanks, texts and errors. The copy's is computed by a small spreadsheet of the tests' own.
 */

const copy = spreadsheet(
  [...lambdas.values()].map((lambda) => [PREFIX + lambda.name, lambdaText(lambda)] as const),
);

/** A cell as the small spreadsheet and as the add-in's functions are given it. */
const inSheet = (cell: Scalar) =>
  typeof cell === "string" && /^#[A-Z]/.test(cell) ? new Problem(cell) : cell;

interface Call {
  readonly formula: string;
  readonly cells: Scalar[][];
  readonly given: unknown[];
}

/** Lays the arguments out on a sheet, one beside the other. */
function layOut(id: string, drawn: readonly Drawn[]): Call {
  const cells: Scalar[][] = [];
  const given: unknown[] = [];
  let column = 0;
  const texts = drawn.map(({ rows, how }) => {
    if (how === "omitted") {
      given.push(undefined);
      return "";
    }
    rows.forEach((row, r) =>
      row.forEach((cell, c) => {
        (cells[r] ??= [])[column + c] = inSheet(cell);
      }),
    );
    const width = elementAt(rows, 0).length;
    const start = cellAddress(0, column);
    const end = cellAddress(rows.length - 1, column + width - 1);
    column += width;
    given.push(how === "as text" ? rows.map((row) => row.map(asText)) : rows);
    const range = start === end ? start : `${start}:${end}`;
    return how === "as text" ? `${range}&""` : range;
  });
  while (texts.at(-1) === "") {
    texts.pop();
    given.pop();
  }
  const height = cells.length;
  for (let row = 0; row < height; row++) {
    cells[row] = Array.from({ length: column }, (_, at) => cells[row]?.[at] ?? null);
  }
  return { formula: `SPARE.${id}(${texts.join(",")})`, cells, given };
}

function asText(cell: Scalar): Scalar {
  if (cell === null) return "";
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  return typeof cell === "number" ? String(Number(cell.toPrecision(15))) : cell;
}

/** What the add-in shows. */
const own = (id: string, given: readonly unknown[]): Scalar[][] =>
  call(id, ...given).map((row) =>
    row.map((cell) => (cell instanceof CellError ? cell.code : cell)),
  );

/** What the copy shows. */
function copied(formula: string, cells: Scalar[][]): Scalar[][] {
  const { text } = rewriteFormula(formula)!;
  const result: Plain = copy.evaluate(text, cells);
  const rows = result instanceof Matrix ? result.cells : [[result]];
  return rows.map((row) => row.map((cell) => (cell instanceof Problem ? cell.code : (cell ?? 0))));
}

/** The same to so many digits; a spreadsheet's quantiles have fewer of them. */
function same(one: Scalar, other: Scalar, digits: number): boolean {
  if (typeof one !== "number" || typeof other !== "number") return one === other;
  return Math.abs(one - other) <= digits * Math.max(1e-3, Math.abs(one), Math.abs(other));
}

/** Compares a function of the copy with the add-in's over so many random calls. */
export function compareWithCore(id: string, calls: number): void {
  const { arguments: parameters, digits = 1e-11 } = named(draws, id);
  const random = randomStream(id.length * 1000 + id.charCodeAt(0));
  for (let time = 0; time < calls; time++) {
    const { formula, cells, given } = layOut(id, parameters(random));
    const [mine, theirs] = [own(id, given), copied(formula, cells)];
    const agree =
      mine.length === theirs.length &&
      mine.every((row, r) => {
        const other = elementAt(theirs, r);
        return (
          row.length === other.length &&
          row.every((cell, c) => same(elementAt(other, c), cell, digits))
        );
      });
    const where = `SEED=${seed}: ${formula} on ${JSON.stringify(given)}`;
    if (!agree) expect(theirs, where).toEqual(mine);
  }
}
