import type { BaseValueObject } from "@univerjs/engine-formula";
import { BaseFunction, ErrorType } from "@univerjs/engine-formula";
import { widthOf } from "../../../cells";
import { cellList, isReference, type Argument, type CellList } from "./cellList";
import { readCriterion, type Criterion } from "./criterion";
import { wrongValue } from "./numbers";
import {
  Fault,
  fromGrid,
  stretched,
  toGrid,
  type Arity,
  type Plain,
  type PlainGrid,
} from "./plain";

/** A list and what its cells are to meet. */
interface Condition {
  readonly list: CellList;
  readonly criterion: Criterion;
}

/** From the values of the cells that count, and where they are to be found. */
type Sum = (values: readonly Plain[]) => Plain;

/**
 * COUNTIF and its relatives. Where a criterion asks for one value, the cells that have it are looked up and
 * not gone through, which makes a formula that is filled down a long log fast.
 */
export const conditionalFunctions = (): readonly BaseFunction[] => [
  counting("COUNTIF", [2, 2]),
  counting("COUNTIFS", [2, 254]),
  oneCondition("SUMIF", total),
  oneCondition("AVERAGEIF", mean),
  manyConditions("SUMIFS", total),
  manyConditions("AVERAGEIFS", mean),
  manyConditions("MAXIFS", (values) => largest(values, (value) => value)),
  manyConditions("MINIFS", (values) => largest(values, (value) => -value)),
];

type Compute = (lists: readonly CellList[], criteria: readonly Plain[]) => Plain;

/** A function of lists and criteria; where criteria are several cells, it is computed for each. */
class Conditional extends BaseFunction {
  override needsReferenceObject = true;

  /** `isCriterion` tells which of the arguments are criteria, by their place. */
  constructor(
    name: string,
    [least, most]: Arity,
    private readonly isCriterion: (place: number) => boolean,
    private readonly compute: Compute,
  ) {
    super(name);
    this.minParams = least;
    this.maxParams = most;
  }

  override calculate(...values: BaseValueObject[]): BaseValueObject {
    const lists = values.filter((_value, place) => !this.isCriterion(place)).map(cellList);
    const criteria = values.filter((_value, place) => this.isCriterion(place)).map(gridOf);
    const rows = Math.max(...criteria.map((grid) => grid.length));
    const columns = Math.max(...criteria.map(widthOf));
    return fromGrid(
      Array.from({ length: rows }, (_row, row) =>
        Array.from({ length: columns }, (_column, column) =>
          this.compute(
            lists,
            criteria.map((grid) => stretched(grid, row, column)),
          ),
        ),
      ),
    );
  }
}

/** The values begin where their range does, and are as many as the cells that are to meet the criterion. */
class OneCondition extends Conditional {
  override calculate(
    range: BaseValueObject,
    criterion: BaseValueObject,
    values?: BaseValueObject,
  ): BaseValueObject {
    if (!values) return super.calculate(range, criterion);
    const [conditions, given]: readonly [Argument, Argument] = [range, values];
    if (!isReference(given) || !isReference(conditions)) {
      return super.calculate(range, criterion, values);
    }
    const own = conditions.getRangePosition();
    const { startRow, startColumn, ...end } = given.getRangePosition();
    const endRow = startRow + own.endRow - own.startRow;
    const endColumn = startColumn + own.endColumn - own.startColumn;
    if (end.endRow === endRow && end.endColumn === endColumn) {
      return super.calculate(range, criterion, values);
    }
    const area = { startRow, startColumn, endRow, endColumn };
    const asLarge: Argument = this.createReferenceObject(given, area);
    return super.calculate(range, criterion, asLarge as BaseValueObject);
  }
}

function gridOf(argument: Argument): PlainGrid {
  if (!argument.isReferenceObject()) return toGrid(argument as BaseValueObject);
  const { cells, rows, columns } = cellList(argument);
  return Array.from({ length: rows }, (_row, row) =>
    cells.slice(row * columns, (row + 1) * columns),
  );
}

function counting(name: string, arity: Arity): BaseFunction {
  const isCriterion = (place: number) => place % 2 === 1;
  return new Conditional(name, arity, isCriterion, (lists, criteria) => {
    const conditions = pair(lists, criteria);
    return conditions ? placesMeeting(conditions).length : wrongValue;
  });
}

/** The list with the values may be left out. */
function oneCondition(name: string, sum: Sum): BaseFunction {
  const isCriterion = (place: number) => place === 1;
  return new OneCondition(name, [2, 3], isCriterion, ([list, values = list], criteria) => {
    const conditions = list && pair([list], criteria);
    return conditions && values ? sum(valuesMeeting(conditions, values)) : wrongValue;
  });
}

function manyConditions(name: string, sum: Sum): BaseFunction {
  const isCriterion = (place: number) => place > 0 && place % 2 === 0;
  return new Conditional(name, [3, 255], isCriterion, ([values, ...lists], criteria) => {
    const conditions = pair(lists, criteria);
    if (!conditions || !values || !sameShape([values, ...lists])) return wrongValue;
    return sum(valuesMeeting(conditions, values));
  });
}

function pair(lists: readonly CellList[], criteria: readonly Plain[]): Condition[] | undefined {
  if (lists.length !== criteria.length) return undefined;
  if (!sameShape(lists)) return undefined;
  return criteria.flatMap((criterion, index) => {
    const list = lists[index];
    return list ? [{ list, criterion: readCriterion(criterion) }] : [];
  });
}

const sameShape = (lists: readonly CellList[]) =>
  new Set(lists.map(({ rows, columns }) => `${rows} ${columns}`)).size <= 1;

const valuesMeeting = (conditions: readonly Condition[], { cells }: CellList) =>
  placesMeeting(conditions).map((place) => cells[place] ?? null);

function placesMeeting(conditions: readonly Condition[]): readonly number[] {
  const found = conditions.flatMap(({ list, criterion: { key } }) =>
    key === undefined ? [] : [list.at(key)],
  );
  const fewest = found.sort((one, other) => one.length - other.length)[0];
  const others = conditions.filter(
    ({ list, criterion: { key } }) => key === undefined || list.at(key) !== fewest,
  );
  const places = fewest ?? conditions[0]?.list.cells.keys() ?? [];
  const meetsAll = (place: number) =>
    others.every(({ list, criterion }) => criterion.meets(list.cells[place] ?? null));
  return Array.from(places).filter(meetsAll);
}

/** The sum of the numbers, or the first error among the values. */
function total(values: readonly Plain[]): Plain {
  let sum = 0;
  for (const value of values) {
    if (value instanceof Fault) return value;
    if (typeof value === "number") sum += value;
  }
  return sum;
}

function mean(values: readonly Plain[]): Plain {
  const sum = total(values);
  const count = values.filter((value) => typeof value === "number").length;
  if (typeof sum !== "number") return sum;
  return count === 0 ? new Fault(ErrorType.DIV_BY_ZERO) : sum / count;
}

/** The number of the largest size; 0 where there is none, as in a spreadsheet. */
function largest(values: readonly Plain[], size: (value: number) => number): Plain {
  let found: number | undefined;
  for (const value of values) {
    if (value instanceof Fault) return value;
    if (typeof value !== "number") continue;
    if (found === undefined || size(value) > size(found)) found = value;
  }
  return found ?? 0;
}
