import { isMissingText, numberInText, quoted, readCell } from "../cells";
import { plateSets } from "../core/load/plates";
import { equations, type EquationName } from "../core/strength/equations";
import {
  CardProblem,
  LIMITS,
  type Card,
  type CardLift,
  type CardPlate,
  type PlannedSet,
  type Unit,
} from "./card";
import { checkCard, listOf } from "./checkCard";
import { findHeading, findSetting, textAt, type Cells, type Place } from "./sheetWords";

/** The cards that a sheet's cells ask for, and what the coach should know of the rows that make none. */
export interface SheetCards {
  readonly cards: readonly Card[];
  readonly notes: readonly string[];
  /** The address of the page that shows cards, where the sheet names one. */
  readonly page: string | undefined;
}

/**
 * Reads cards from a sheet "Cards", or from the part of one that is selected.
 *
 * One heading row starts with "lifter"; beside it stand the lifts, each with its unit ("Back squat, kg"), and perhaps
 * "constant", the lifter's own curve. Below it is a row a lifter, up to two blank rows in a row. Elsewhere on the sheet may stand settings (smallest
 * step, bar, equation, card page) with their value to the right, a table of today's sets (lift, sets, reps, reserve) and
 * a table of plates (plate, pairs).
 */
export function readCards(cells: Cells, made: string): SheetCards {
  const heading = findHeading(cells, ["lifter"]);
  if (!heading) {
    throw new CardProblem('no cell says "lifter"; expected a heading row: lifter, then the lifts');
  }
  const columns = readHeading(cells, heading);
  const unit = unitOf(columns.lifts, textAt(cells, findSetting(cells, "unit")));
  const shared = {
    unit,
    ...readBar(cells, unit),
    equation: readEquation(cells),
    made,
  };
  const today = readToday(cells);
  const cards: Card[] = [];
  const notes: string[] = [];
  let blanks = 0;
  for (let row = heading.row + 1; row < cells.length && blanks < 2; row++) {
    const name = textAt(cells, { row, column: heading.column });
    blanks = name === "" ? blanks + 1 : 0;
    if (name === "") continue;
    const lifts = columns.lifts.flatMap((lift): CardLift[] => {
      const oneRepMax = numberAt(cells, { row, column: lift.column }, `${name}: ${lift.name}`);
      return oneRepMax === undefined ? [] : [{ name: lift.name, oneRepMax }];
    });
    if (lifts.length === 0) {
      notes.push(`${name}: no maximum is given, so there is no card`);
      continue;
    }
    const constant =
      columns.constant === undefined
        ? undefined
        : numberAt(cells, { row, column: columns.constant }, `${name}: constant`);
    const card = { ...shared, name, lifts, equation: constant ?? shared.equation };
    const trained = today.filter(({ lift }) => lifts.some((known) => known.name === lift));
    cards.push(checked({ ...card, today: trained }));
  }
  for (const lift of new Set(today.map((planned) => planned.lift))) {
    if (!columns.lifts.some(({ name }) => name === lift)) {
      notes.push(`${quoted(lift)} is planned for today, but no column holds its maxima`);
    }
  }
  if (cards.length === 0 && notes.length === 0) {
    throw new CardProblem('no lifter stands below the heading "lifter"');
  }
  return { cards, notes, page: textAt(cells, findSetting(cells, "card page")) || undefined };
}

interface LiftColumn {
  readonly name: string;
  readonly column: number;
  readonly unit: string | undefined;
}

interface Columns {
  readonly lifts: readonly LiftColumn[];
  readonly constant: number | undefined;
}

/** "Back squat, kg" or "Back squat (kg)" is a lift and its unit. */
function readHeading(cells: Cells, heading: Place): Columns {
  const lifts: LiftColumn[] = [];
  let constant: number | undefined;
  for (let column = heading.column + 1; ; column++) {
    const text = textAt(cells, { row: heading.row, column });
    if (text === "") break;
    if (/^(own )?constant$/i.test(text)) {
      constant = column;
      continue;
    }
    const match = /^(.*?)(?:,\s*|\s*\()(kg|lb)s?\)?$/i.exec(text);
    lifts.push({ name: match?.[1] ?? text, column, unit: match?.[2]?.toLowerCase() });
  }
  if (lifts.length === 0) throw new CardProblem('no lift stands beside the heading "lifter"');
  if (lifts.length > LIMITS.lifts) {
    throw new CardProblem(
      `${lifts.length} lifts stand beside "lifter"; a card holds up to ${LIMITS.lifts}`,
    );
  }
  return { lifts, constant };
}

/** One unit for the whole card, said in the headings or beside "unit", and never guessed. */
function unitOf(lifts: readonly LiftColumn[], said: string): Unit {
  const units = new Set(lifts.flatMap(({ unit }) => unit ?? []));
  if (said !== "") units.add(said.toLowerCase().replace(/s$/, ""));
  const [unit] = units;
  if (units.size > 1)
    throw new CardProblem("some loads are in kg and some in lb; expected one unit");
  if (unit !== "kg" && unit !== "lb") {
    throw new CardProblem('the unit is not said; expected headings such as "Back squat, kg"');
  }
  return unit;
}

/** The bar, the plates and the smallest step: twice the smallest plate unless it is given. */
function readBar(cells: Cells, unit: Unit) {
  const usual = plateSets[unit];
  const plates = readPlates(cells) ?? usual.plates;
  const smallest = 2 * Math.min(...plates.map(({ weight }) => weight));
  const setting = (words: string) => numberAt(cells, findSetting(cells, words), words);
  return {
    bar: setting("bar") ?? usual.bar,
    increment: setting("smallest step") ?? smallest,
    plates,
  };
}

function readPlates(cells: Cells): CardPlate[] | undefined {
  const heading = findHeading(cells, ["plate", "pairs"]);
  if (!heading) return undefined;
  const plates: CardPlate[] = [];
  for (let row = heading.row + 1; row < cells.length; row++) {
    const weight = numberAt(cells, { row, column: heading.column }, "plate");
    if (weight === undefined) break;
    const pairs = numberAt(cells, { row, column: heading.column + 1 }, "pairs", true);
    plates.push(pairs === undefined ? { weight } : { weight, pairs });
  }
  return plates.length > 0 ? plates : undefined;
}

function readEquation(cells: Cells): EquationName | number {
  const place = findSetting(cells, "equation");
  const text = textAt(cells, place).toLowerCase();
  if (text === "") return "epley";
  if (Object.hasOwn(equations, text)) return text as EquationName;
  const constant = numberInText(text);
  if (constant !== undefined) return constant;
  throw new CardProblem(
    `equation is ${quoted(text)}; expected ${Object.keys(equations).join(", ")} or a curve constant`,
  );
}

function readToday(cells: Cells): PlannedSet[] {
  const heading = findHeading(cells, ["lift", "sets", "reps", "reserve"]);
  const planned: PlannedSet[] = [];
  if (!heading) return planned;
  for (let row = heading.row + 1; row < cells.length; row++) {
    const lift = textAt(cells, { row, column: heading.column });
    if (lift === "") break;
    const at = (offset: number, words: string) =>
      numberAt(cells, { row, column: heading.column + offset }, `${lift}: ${words}`, true);
    const reps = at(2, "reps");
    const reserve = at(3, "reserve");
    if (reps === undefined || reserve === undefined) {
      throw new CardProblem(`${lift} is planned without its reps or its reserve`);
    }
    planned.push({ lift, sets: at(1, "sets") ?? 1, reps, reserve });
  }
  if (planned.length > LIMITS.today) {
    throw new CardProblem(`${planned.length} sets are planned; a card holds up to ${LIMITS.today}`);
  }
  return planned;
}

/** A number in a cell; a blank and a text without digits ("inj") are none, and so is 0 unless it counts. */
function numberAt(
  cells: Cells,
  place: Place | undefined,
  what: string,
  zeroCounts = false,
): number | undefined {
  if (!place) return undefined;
  const value = readCell(cells[place.row]?.[place.column]);
  if (value === null || (value === 0 && !zeroCounts)) return undefined;
  if (typeof value === "number") return value;
  if (typeof value === "string") {
    const number = numberInText(value);
    if (number !== undefined) return number === 0 && !zeroCounts ? undefined : number;
    if (isMissingText(value)) return undefined;
    throw new CardProblem(`${what} is text, ${quoted(value)}; expected a number`);
  }
  throw new CardProblem(`${what} is no number`);
}

/** The same checks for a card that is made as for one that comes by link, with the lifter's name. */
function checked(card: Card): Card {
  try {
    return checkCard(listOf(card));
  } catch (error) {
    if (error instanceof CardProblem) throw new CardProblem(`${card.name}: ${error.message}`);
    throw error;
  }
}
