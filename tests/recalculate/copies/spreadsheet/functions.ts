import betainc from "@stdlib/math-base-special-betainc";
import erfc from "@stdlib/math-base-special-erfc";
import erfcinv from "@stdlib/math-base-special-erfcinv";
import gammaln from "@stdlib/math-base-special-gammaln";
import { cellAt, elementAt } from "../../../present";
import {
  finite,
  Matrix,
  matrixOf,
  notAvailable,
  numberIn,
  overOne,
  overRanges,
  overTwo,
  problemIn,
  Problem,
  textIn,
  truthIn,
  value,
  workedOut,
  type Callable,
  type Plain,
  type Scalar,
  type Value,
} from "./values";

/*
 * Functions of spreadsheets, as Microsoft's help describes them, written for the tests and sharing nothing with
 * the page's engine.
 */
export type Sheet = (...given: Value[]) => Value;

const plain = (given: Value | undefined): Plain => {
  if (given === undefined) throw new Error("too few arguments");
  if (typeof given === "function") throw new Error("a LAMBDA stands where a value should");
  return given;
};

/** A function of numbers. */
const ofNumbers = (of: (...numbers: number[]) => Scalar): Sheet => {
  const ofCells = (...cells: Scalar[]) => {
    if (cells.every(isNumber)) return of(...cells);
    const numbers = cells.map(numberIn);
    return problemIn(numbers) ?? of(...(numbers as number[]));
  };
  return (...given) => overRanges(given.map(plain), ofCells);
};

const isNumber = (given: Scalar): given is number => typeof given === "number";

/** A function of two numbers, as most signs are. */
const ofTwoNumbers = (of: (one: number, other: number) => Scalar): Sheet => {
  const ofCells = (one: Scalar, other: Scalar) => {
    const left = numberIn(one);
    if (left instanceof Problem) return left;
    const right = numberIn(other);
    return right instanceof Problem ? right : of(left, right);
  };
  return (one, other) => overTwo(plain(one), plain(other), ofCells);
};

/** A function of texts, and of numbers where they are said. */
const ofTexts = (of: (...texts: string[]) => Scalar): Sheet => {
  const ofCells = (...cells: Scalar[]) => {
    const found = cells.map(textIn);
    return problemIn(found) ?? of(...(found as string[]));
  };
  return (...given) => overRanges(given.map(plain), ofCells);
};

/** A question about a cell, which an error answers too. */
const ask =
  (of: (cell: Scalar) => Scalar): Sheet =>
  (given) =>
    overOne(plain(given), of);

/** A function of all numbers in its arguments; text and truth values in ranges do not count. */
const ofAll =
  (of: (numbers: number[]) => Scalar): Sheet =>
  (...given) => {
    const numbers: number[] = [];
    for (const each of given.map(plain)) {
      for (const cell of matrixOf(each).cells.flat()) {
        if (cell instanceof Problem) return cell;
        if (typeof cell === "number") numbers.push(cell);
        else if (!(each instanceof Matrix)) {
          const number = numberIn(cell);
          if (number instanceof Problem) return number;
          numbers.push(number);
        }
      }
    }
    return of(numbers);
  };

const sumOf = (numbers: readonly number[]) => numbers.reduce((sum, number) => sum + number, 0);

const count = (given: Value, otherwise: number) => {
  const number = numberIn(cellAt(matrixOf(plain(given ?? otherwise)).cells, 0, 0));
  return number instanceof Problem ? number : Math.trunc(number);
};

/** Where a number would be rounded away from 0, by its decimal digits. */
function round(number: number, digits: number): number {
  const text = Math.abs(number).toPrecision(15);
  const moved = Math.round(Number(`${Number(text)}e${digits}`.replace(/e([+-]\d+)e/, "e$1e")));
  const shift = Number.isNaN(moved)
    ? Number(Math.abs(number).toFixed(Math.min(100, Math.max(0, digits))))
    : Number(`${moved}e${-digits}`);
  return Math.sign(number) * shift;
}

function numberValue(text: string): Scalar {
  const bare = text.replace(/[\s']/g, "");
  if (bare === "") return 0;
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(bare) ? finite(Number(bare)) : value;
}

const normal = (z: number) => erfc(-z / Math.SQRT2) / 2;

/** The least logarithm up to `high` at which a rising function reaches this, found by halving to the last digit. */
function reached(goal: number, high: number, of: (logarithm: number) => number): number {
  let low = -745;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) return high;
    if (of(middle) < goal) low = middle;
    else high = middle;
  }
}

/** The value below which a beta distribution lies with this chance; by its logarithm, so that a tiny one has its digits too. */
function betaInverse(chance: number, a: number, b: number): Scalar {
  if (!(chance > 0 && chance <= 1 && a > 0 && b > 0)) return new Problem("#NUM!");
  return Math.exp(reached(chance, 0, (logarithm) => betainc(Math.exp(logarithm), a, b)));
}

/** The share of a gamma distribution of this shape below x: its power series, or Legendre's continued fraction (DLMF 8.7.1, 8.9.2). */
function gammaShare(x: number, shape: number): number {
  if (x <= 0) return 0;
  const density = Math.exp(shape * Math.log(x) - x - gammaln(shape));
  if (x < shape + 1) {
    let term = 1 / shape;
    let total = term;
    for (let n = 1; term > total * 1e-17; n++) total += term *= x / (shape + n);
    return density * total;
  }
  let fraction = 0;
  for (let n = 2000; n > 0; n--) fraction = (n * (n - shape)) / (x + 2 * n + 1 - shape - fraction);
  return 1 - density / (x + 1 - shape - fraction);
}

/** The value below which a gamma distribution lies with this chance. */
function gammaInverse(chance: number, shape: number): number {
  const most = Math.log(shape + 1e3 * Math.sqrt(shape) + 1e3);
  return Math.exp(reached(chance, most, (logarithm) => gammaShare(Math.exp(logarithm), shape)));
}

const logChoose = (all: number, some: number) =>
  gammaln(all + 1) - gammaln(some + 1) - gammaln(all - some + 1);

const compare = (one: Scalar, other: Scalar): number => {
  const rank = (cell: Scalar) =>
    typeof cell === "number"
      ? 0
      : typeof cell === "string"
        ? 1
        : typeof cell === "boolean"
          ? 2
          : -1;
  // A blank is 0, "" or FALSE, whichever it is compared with.
  const like = (cell: Scalar, beside: Scalar): Scalar =>
    cell !== null
      ? cell
      : typeof beside === "string"
        ? ""
        : typeof beside === "boolean"
          ? false
          : 0;
  const [a, b] = [like(one, other), like(other, one)];
  if (rank(a) !== rank(b)) return rank(a) - rank(b);
  if (typeof a === "string") {
    const [left, right] = [a.toLowerCase(), (b as string).toLowerCase()];
    return left < right ? -1 : left > right ? 1 : 0;
  }
  return Number(a) - Number(b);
};

const comparing = (holds: (order: number) => boolean): Sheet => {
  const ofCells = (one: Scalar, other: Scalar) => {
    if (typeof one === "number" && typeof other === "number") return holds(one - other);
    return problemIn([one, other]) ?? holds(compare(one, other));
  };
  return (one, other) => overTwo(plain(one), plain(other), ofCells);
};

const excelTrim = (text: string) => text.replace(/^ +| +$/g, "").replace(/ +/g, " ");

const errorTypes = "#NULL! #DIV/0! #VALUE! #REF! #NAME? #NUM! #N/A".split(" ");

const joining: Sheet = (one, other) =>
  overTwo(plain(one), plain(other), (a, b) => {
    const left = textIn(a);
    if (left instanceof Problem) return left;
    const right = textIn(b);
    return right instanceof Problem ? right : left + right;
  });

export const operators = {
  "+": ofTwoNumbers((a, b) => finite(a + b)),
  "-": ofTwoNumbers((a, b) => finite(a - b)),
  "*": ofTwoNumbers((a, b) => finite(a * b)),
  "/": ofTwoNumbers((a, b) => (b === 0 ? new Problem("#DIV/0!") : finite(a / b))),
  "^": ofTwoNumbers((a, b) => finite(a ** b)),
  "&": joining,
  "=": comparing((order) => order === 0),
  "<>": comparing((order) => order !== 0),
  "<": comparing((order) => order < 0),
  ">": comparing((order) => order > 0),
  "<=": comparing((order) => order <= 0),
  ">=": comparing((order) => order >= 0),
  negative: ofNumbers((a) => -a),
} satisfies Readonly<Record<string, Sheet>>;

export const functions: Readonly<Record<string, Sheet>> = {
  ABS: ofNumbers((a) => Math.abs(a)),
  INT: ofNumbers((a) => Math.floor(a)),
  SQRT: ofNumbers((a) => finite(Math.sqrt(a))),
  EXP: ofNumbers((a) => finite(Math.exp(a))),
  LN: ofNumbers((a) => finite(Math.log(a))),
  LOG10: ofNumbers((a) => finite(Math.log10(a))),
  ROUND: ofNumbers(round),
  SUM: ofAll(sumOf),
  MAX: ofAll((numbers) => (numbers.length === 0 ? 0 : numbers.reduce((a, b) => Math.max(a, b)))),
  MIN: ofAll((numbers) => (numbers.length === 0 ? 0 : numbers.reduce((a, b) => Math.min(a, b)))),
  AVERAGE: ofAll((numbers) =>
    numbers.length === 0 ? new Problem("#DIV/0!") : sumOf(numbers) / numbers.length,
  ),
  COUNT: (...given) =>
    given
      .flatMap((each) => matrixOf(plain(each)).cells.flat())
      .filter((cell) => typeof cell === "number").length,
  LEN: ofTexts((text) => text.length),
  TRIM: ofTexts(excelTrim),
  LOWER: ofTexts((text) => text.toLowerCase()),
  UPPER: ofTexts((text) => text.toUpperCase()),
  EXACT: ofTexts((one, other) => one === other),
  LEFT: ofTexts((text, length = "1") => text.slice(0, Number(length))),
  RIGHT: ofTexts((text, length = "1") => text.slice(-Number(length))),
  MID: ofTexts((text, start, length) => text.substr(Number(start) - 1, Number(length))),
  SUBSTITUTE: ofTexts((text, old, fresh) => (old === "" ? text : text.replaceAll(old, fresh))),
  FIND: ofTexts((wanted, text) => (text.includes(wanted) ? text.indexOf(wanted) + 1 : value)),
  SEARCH: ofTexts((wanted, text) => {
    const at = text.toLowerCase().indexOf(wanted.toLowerCase());
    return at < 0 ? value : at + 1;
  }),
  UNICHAR: ofNumbers((code) => String.fromCodePoint(code)),
  NUMBERVALUE: ofTexts((text) => numberValue(text)),
  ISNUMBER: ask((cell) => typeof cell === "number"),
  ISTEXT: ask((cell) => typeof cell === "string"),
  ISLOGICAL: ask((cell) => typeof cell === "boolean"),
  ISERROR: ask((cell) => cell instanceof Problem),
  "ERROR.TYPE": ask((cell) =>
    cell instanceof Problem && errorTypes.includes(cell.code)
      ? errorTypes.indexOf(cell.code) + 1
      : notAvailable,
  ),
  IFERROR: (given, instead) =>
    overTwo(plain(given), plain(instead), (cell, otherwise) =>
      cell instanceof Problem ? otherwise : cell,
    ),
  IFNA: (given, instead) =>
    overTwo(plain(given), plain(instead), (cell, otherwise) =>
      cell instanceof Problem && cell.code === "#N/A" ? otherwise : cell,
    ),
  OR: (...given) => {
    const cells = given.flatMap((each) => matrixOf(plain(each)).cells.flat());
    return problemIn(cells) ?? cells.some((cell) => truthIn(cell) === true);
  },
  ROWS: (given) => (given instanceof Problem ? given : matrixOf(plain(given)).rows),
  COLUMNS: (given) => (given instanceof Problem ? given : matrixOf(plain(given)).columns),
  INDEX: (range, row, column) => {
    const { cells, columns, isReference } = matrixOf(plain(range));
    const [r, c] = [count(row, 0), count(column, 0)];
    if (range instanceof Problem) return range;
    if (r instanceof Problem || c instanceof Problem) return value;
    if (r > cells.length || c > columns) return new Problem("#REF!");
    const rows = r === 0 ? cells : [elementAt(cells, r - 1)];
    const found = c === 0 ? rows : rows.map((each) => [elementAt(each, c - 1)]);
    return isReference ? new Matrix(found, true) : workedOut(found);
  },
  SEQUENCE: (rows, columns = 1, start = 1, step = 1) => {
    const sizes = [count(rows, 1), count(columns, 1), count(start, 1), count(step, 1)];
    const problem = problemIn(sizes);
    if (problem) return problem;
    const [down, across, first, by] = sizes as [number, number, number, number];
    return workedOut(
      Array.from({ length: down }, (_, r) =>
        Array.from({ length: across }, (_, c) => first + by * (r * across + c)),
      ),
    );
  },
  TRANSPOSE: (given) => {
    const { cells } = matrixOf(plain(given));
    return workedOut(
      elementAt(cells, 0).map((_, column) => cells.map((row) => elementAt(row, column))),
    );
  },
  HSTACK: (...given) => {
    const all = given.map((each) => matrixOf(plain(each)));
    const rows = Math.max(...all.map((each) => each.rows));
    return workedOut(
      Array.from({ length: rows }, (_, row) =>
        all.flatMap(
          ({ cells, columns }) => cells[row] ?? Array<Scalar>(columns).fill(notAvailable),
        ),
      ),
    );
  },
  VSTACK: (...given) => {
    const all = given.map((each) => matrixOf(plain(each)));
    const columns = Math.max(...all.map((each) => each.columns));
    return workedOut(
      all.flatMap(({ cells }) =>
        cells.map((row) => [...row, ...Array<Scalar>(columns - row.length).fill(notAvailable)]),
      ),
    );
  },
  FILTER: (given, include) => {
    const { cells, columns } = matrixOf(plain(given));
    const included = matrixOf(plain(include));
    const chosen = included.cells.flat().map(truthIn);
    const problem = problemIn(chosen);
    if (problem) return problem;
    if (included.rows === 1 && included.columns === columns && columns > 1) {
      return workedOut(cells.map((row) => row.filter((_, column) => chosen[column])));
    }
    return chosen.length === cells.length
      ? workedOut(cells.filter((_, row) => chosen[row]))
      : value;
  },
  MAP: (...given) => {
    const call = given.at(-1) as Callable;
    const all = given.slice(0, -1).map((each) => matrixOf(plain(each)));
    return workedOut(
      elementAt(all, 0).cells.map((row, r) =>
        row.map((_, c) => {
          const cells = all.map((each) => each.cells[r]?.[c] ?? notAvailable);
          const found = call(...cells);
          return found instanceof Matrix || typeof found === "function"
            ? new Problem("#CALC!")
            : found;
        }),
      ),
    );
  },
  BYROW: (given, call) =>
    workedOut(
      matrixOf(plain(given)).cells.map((row) => [(call as Callable)(new Matrix([row])) as Scalar]),
    ),
  MMULT: (left, right) => {
    const [one, other] = [matrixOf(plain(left)), matrixOf(plain(right))];
    const cells = [...one.cells.flat(), ...other.cells.flat()];
    const problem = problemIn(cells);
    if (problem) return problem;
    if (one.columns !== other.rows || !cells.every((cell) => typeof cell === "number"))
      return value;
    return workedOut(
      one.cells.map((row) =>
        elementAt(other.cells, 0).map((_, column) =>
          sumOf(row.map((cell, at) => Number(cell) * Number(cellAt(other.cells, at, column)))),
        ),
      ),
    );
  },
  TEXTJOIN: (delimiter, ignoreEmpty, ...given) => {
    const cells = given.flatMap((each) => matrixOf(plain(each)).cells.flat()).map(textIn);
    const problem = problemIn(cells);
    if (problem) return problem;
    const kept = ignoreEmpty === true ? cells.filter((cell) => cell !== "") : cells;
    return kept.join(delimiter as string);
  },
  XMATCH: (wanted, list) => {
    const cells = matrixOf(plain(list)).cells.flat();
    return overRanges([plain(wanted)], (cell) => {
      if (cell instanceof Problem) return cell;
      const at = cells.findIndex((each) => !(each instanceof Problem) && compare(each, cell) === 0);
      return at < 0 ? notAvailable : at + 1;
    });
  },
  GAMMALN: ofNumbers((a) => (a > 0 ? gammaln(a) : new Problem("#NUM!"))),
  "NORM.S.DIST": ofNumbers(normal),
  "NORM.S.INV": ofNumbers((chance) =>
    chance > 0 && chance < 1 ? -Math.SQRT2 * erfcinv(2 * chance) : new Problem("#NUM!"),
  ),
  "BETA.DIST": ofNumbers((x, a, b) =>
    a > 0 && b > 0 && x >= 0 && x <= 1 ? betainc(x, a, b) : new Problem("#NUM!"),
  ),
  "BETA.INV": ofNumbers(betaInverse),
  "GAMMA.DIST": ofNumbers((x, shape, scale) =>
    x >= 0 && shape > 0 && scale > 0 ? gammaShare(x / scale, shape) : new Problem("#NUM!"),
  ),
  "GAMMA.INV": ofNumbers((chance, shape, scale) =>
    chance > 0 && chance < 1 && shape > 0 && scale > 0
      ? gammaInverse(chance, shape) * scale
      : new Problem("#NUM!"),
  ),
  "HYPGEOM.DIST": ofNumbers((found, drawn, marked, total) => {
    const possible = found >= 0 && found <= Math.min(drawn, marked);
    if (!possible || found < drawn + marked - total) return new Problem("#NUM!");
    return Math.exp(
      logChoose(marked, found) + logChoose(total - marked, drawn - found) - logChoose(total, drawn),
    );
  }),
};
