import {
  CellError,
  isHeadingText,
  keyContent,
  labelIdentity,
  readCell,
  tellRows,
  type Content,
} from "../../cells";
import { implementationOf } from "../../functions/implementationOf";
import { implementations } from "../../functions/implementations";
import { LAST_ROW } from "../../formula/address";
import type { CellValue } from "../../xlsx/model";
import { FormulaFailed, Refused } from "../problem";
import type { Database } from "./database";
import { isColumns, type TableFormula } from "./formula";

/** What a formula came to over a table. */
export interface Summary {
  readonly headings: readonly string[];
  /** A row a key where the formula names keys, in the order in which they first appear in the file. */
  readonly rows: readonly (readonly CellValue[])[];
  /** How many rows of the file were read, and how many keys they have. */
  readonly read: number;
  readonly keys: number;
}

/** One call takes as many rows as a sheet has; a table may have more, key by key. */
const MOST_ROWS = LAST_ROW;

/** The rows of one key. */
interface Group {
  readonly identity: string;
  /** The number of each row in the file. */
  readonly numbers: number[];
  /** The cells, a list a column of the formula. */
  readonly cells: CellValue[][];
}

/** Answers a formula over a table, a key at a time where it names keys. */
export async function summarise(formula: TableFormula, database: Database): Promise<Summary> {
  const columns = columnsOf(formula, database.columns);
  const keys = formula.by === undefined ? [] : columnsIn(formula, formula.by, database.columns);
  const places = keys.map((key) => columns.indexOf(key));
  const results = new Map<string, Result>();
  let read = 0;
  for await (const group of groupsOf(database.pieces(columns, keys), places, columns.length)) {
    read += group.numbers.length;
    if (results.has(group.identity)) {
      throw new Refused(
        `the key "${group.identity}" is spelled in ways that sort apart; tidy it first`,
      );
    }
    results.set(group.identity, resultOf(formula, group, columns, database.columns));
  }
  const [headings = []] = [...results.values()].map((result) => result.headings);
  const inOrder = [...results.values()].sort((one, other) => one.first - other.first);
  const rows = inOrder.flatMap((result) => result.rows);
  return { headings: headings.map(String), rows, read, keys: keys.length === 0 ? 0 : results.size };
}

/** Gathers the rows that come together. */
async function* groupsOf(
  pieces: AsyncIterable<CellValue[][]>,
  keys: readonly number[],
  width: number,
): AsyncIterable<Group> {
  let group: Group | undefined;
  let last: readonly CellValue[] = [];
  for await (const [numbers = [], ...cells] of pieces) {
    for (let row = 0; row < numbers.length; row++) {
      const isSame = group && keys.every((key, at) => cells[key]![row] === last[at]);
      if (!isSame) {
        last = keys.map((key) => cells[key]![row] ?? null);
        const identity = last.map((value) => labelIdentity(readCell(value))).join(", ");
        if (group?.identity !== identity) {
          if (group) yield group;
          group = { identity, numbers: [], cells: Array.from({ length: width }, () => []) };
        }
      }
      group!.numbers.push(numbers[row] as number);
      for (let column = 0; column < width; column++) {
        group!.cells[column]!.push(cells[column]![row] ?? null);
      }
    }
    if (group && group.numbers.length > MOST_ROWS) {
      const whose = keys.length === 0 ? "the table" : `the key "${group.identity}"`;
      throw new Refused(
        `${whose} has more than ${MOST_ROWS} rows, which is more than one call takes`,
      );
    }
  }
  if (group) yield group;
}

interface Result {
  /** The number of the first row of its key in the file. */
  readonly first: number;
  readonly headings: readonly Content[];
  readonly rows: readonly (readonly CellValue[])[];
}

/** Calls the function with a key's rows under the columns' names. */
function resultOf(
  formula: TableFormula,
  { numbers, cells }: Group,
  columns: readonly string[],
  there: readonly string[],
): Result {
  const given = formula.arguments.map((argument, at) => {
    if (!isColumns(argument)) return argument.value;
    const own = columnsIn(formula, at, there).map((name) => ({
      name,
      cells: cells[columns.indexOf(name)]!,
    }));
    const read = (value: CellValue) =>
      argument.asText ? (value === null ? "" : String(value)) : value;
    const heading = own.map(({ name }) => (isHeadingText(name) ? name : `column ${name}`));
    return [heading, ...numbers.map((_number, row) => own.map((one) => read(one.cells[row]!)))];
  });
  const [headings = [], ...rows] = implementationOf(implementations, formula.id)(...given);
  const [only] = headings;
  if (rows.length === 0 && only instanceof CellError) throw failure(only, numbers);
  const isSingle = rows.length === 0 && headings.length === 1;
  const body = isSingle ? (only === "" ? [] : [headings]) : rows;
  return {
    first: numbers[0] ?? 0,
    headings: isSingle ? [formula.id.toLowerCase()] : headings,
    rows: body.map((row) => row.map(valueOf)),
  };
}

/** The error that the whole formula shows, its row told as the file counts it under the headings. */
function failure({ code, message }: CellError, numbers: readonly number[]): FormulaFailed {
  const placed = tellRows(message, (row, name) => {
    const number = numbers[row - 2];
    if (number === undefined) return undefined;
    return name === undefined ? `row ${number + 1}` : `${name} in row ${number + 1}`;
  });
  return new FormulaFailed(`${code} ${placed}`);
}

const valueOf = (content: Content): CellValue =>
  content instanceof CellError
    ? content.code
    : typeof content === "number"
      ? content
      : keyContent(content);

/** The table's own names of the columns that a formula reads, each once. */
const columnsOf = (formula: TableFormula, there: readonly string[]) => [
  ...new Set(formula.arguments.flatMap((_argument, at) => columnsIn(formula, at, there))),
];

function columnsIn(formula: TableFormula, at: number, there: readonly string[]): string[] {
  const argument = formula.arguments[at];
  if (!isColumns(argument)) return [];
  return argument.columns.map((name) => {
    const found = there.find((each) => each.toLowerCase() === name.toLowerCase());
    if (found === undefined) {
      throw new Refused(`there is no column "${name}"; the table has ${there.join(", ")}`);
    }
    return found;
  });
}
