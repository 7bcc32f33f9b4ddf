import type { EquationName } from "../core/strength/equations";

/** What one lifter takes along: maxima, the bar and plates at hand, and today's sets if the coach chose them. */
export interface Card {
  readonly name: string;
  /** As the coach's sheet has it; nothing on a card is ever converted. */
  readonly unit: Unit;
  /** The smallest step of the bar. */
  readonly increment: number;
  readonly bar: number;
  readonly plates: readonly CardPlate[];
  /** A published equation, or the lifter's own curve constant. */
  readonly equation: EquationName | number;
  readonly lifts: readonly CardLift[];
  readonly today: readonly PlannedSet[];
  /** The day the card was made, "2026-01-05". */
  readonly made: string;
}

export type Unit = "kg" | "lb";

export interface CardPlate {
  readonly weight: number;
  /** How many pairs there are; no limit unless given. */
  readonly pairs?: number;
}

export interface CardLift {
  readonly name: string;
  readonly oneRepMax: number;
}

/** A set the coach planned for today. */
export interface PlannedSet {
  /** The name of one of the card's lifts. */
  readonly lift: string;
  readonly sets: number;
  readonly reps: number;
  readonly reserve: number;
}

/** A card that cannot be made or read; the message says why in one line. */
export class CardProblem extends Error {
  override name = "CardProblem";
}

/** What a card can hold: enough for any lifter, and little enough for a code on paper. */
export const LIMITS = {
  lifts: 6,
  today: 8,
  plates: 12,
  nameLength: 60,
  /** Heavier than anybody lifts, in pounds too. */
  load: 2000,
  sets: 20,
  reps: 30,
  reserve: 10,
  pairs: 50,
} as const;
