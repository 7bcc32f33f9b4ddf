import { equations, type EquationName } from "../core/strength/equations";
import { CardProblem, LIMITS, type Card, type CardPlate, type Unit } from "./card";

/**
 * A card out of something that came from anywhere: each value is looked at, and what is not a card's is refused.
 * It trusts neither the shape nor the size of what it is given.
 */
export function checkCard(given: unknown): Card {
  const [version, name, unit, increment, bar, plates, equation, lifts, today, made, ...more] = list(
    given,
    10,
    "the card",
  );
  if (version !== 1) throw new CardProblem("it was made by another version");
  if (more.length > 0) throw new CardProblem("it holds more than a card");
  const checkedLifts = list(lifts, LIMITS.lifts, "the lifts").map((lift) => {
    const [liftName, oneRepMax] = list(lift, 2, "a lift");
    return { name: text(liftName, "a lift's name"), oneRepMax: load(oneRepMax, "a maximum") };
  });
  if (checkedLifts.length === 0) throw new CardProblem("it holds no lift");
  if (new Set(checkedLifts.map((lift) => lift.name)).size < checkedLifts.length) {
    throw new CardProblem("it holds a lift twice");
  }
  return {
    name: text(name, "the name"),
    unit: unitOf(unit),
    increment: load(increment, "the smallest step"),
    bar: load(bar, "the bar"),
    plates: list(plates, LIMITS.plates, "the plates").map(plate),
    equation: equationOf(equation),
    lifts: checkedLifts,
    today: list(today, LIMITS.today, "today's sets").map((planned) => {
      const [lift, sets, reps, reserve] = list(planned, 4, "a planned set");
      const at = whole(lift, 0, checkedLifts.length - 1, "a planned lift");
      return {
        lift: checkedLifts[at]!.name,
        sets: whole(sets, 1, LIMITS.sets, "the sets"),
        reps: whole(reps, 1, LIMITS.reps, "the reps"),
        reserve: number(reserve, 0, LIMITS.reserve, "the reserve"),
      };
    }),
    made: day(made),
  };
}

/** A card as a plain list, short enough for a link; `checkCard` reads it back. */
export function listOf(card: Card): unknown[] {
  const at = new Map(card.lifts.map(({ name }, index) => [name, index]));
  return [
    1,
    card.name,
    card.unit,
    card.increment,
    card.bar,
    card.plates.map(({ weight, pairs }) => (pairs === undefined ? [weight] : [weight, pairs])),
    card.equation,
    card.lifts.map(({ name, oneRepMax }) => [name, oneRepMax]),
    card.today.map(({ lift, sets, reps, reserve }) => [at.get(lift), sets, reps, reserve]),
    card.made,
  ];
}

function list(given: unknown, most: number, what: string): unknown[] {
  if (!Array.isArray(given) || given.length > most) {
    throw new CardProblem(`${what} cannot be read`);
  }
  return given as unknown[];
}

/** Letters as people write names: no control characters, and nothing that turns the line around. */
function text(given: unknown, what: string): string {
  const unfit = /[\p{Cc}\p{Cs}\u200e\u200f\u2028-\u202e\u2066-\u2069]/u;
  const fits =
    typeof given === "string" &&
    given.trim() !== "" &&
    given.length <= LIMITS.nameLength &&
    !unfit.test(given);
  if (!fits) throw new CardProblem(`${what} cannot be read`);
  return given;
}

function number(given: unknown, low: number, high: number, what: string): number {
  if (typeof given !== "number" || !(given >= low && given <= high)) {
    throw new CardProblem(`${what} is outside ${low} to ${high}`);
  }
  return given;
}

function load(given: unknown, what: string): number {
  return number(given, 0.01, LIMITS.load, what);
}

function whole(given: unknown, low: number, high: number, what: string): number {
  const value = number(given, low, high, what);
  if (!Number.isInteger(value)) throw new CardProblem(`${what} is not a whole number`);
  return value;
}

function plate(given: unknown): CardPlate {
  const [weight, pairs] = list(given, 2, "a plate");
  const checked = { weight: load(weight, "a plate") };
  return pairs === undefined
    ? checked
    : { ...checked, pairs: whole(pairs, 0, LIMITS.pairs, "the pairs of a plate") };
}

function unitOf(given: unknown): Unit {
  if (given !== "kg" && given !== "lb") throw new CardProblem("its unit is neither kg nor lb");
  return given;
}

function equationOf(given: unknown): EquationName | number {
  if (typeof given === "string" && Object.hasOwn(equations, given)) return given as EquationName;
  return number(given, 1, 1000, "the curve");
}

function day(given: unknown): string {
  if (typeof given !== "string" || !/^\d{4}-\d\d-\d\d$/.test(given)) {
    throw new CardProblem("its day cannot be read");
  }
  return given;
}
