import type { Card } from "../../src/cards/card";
import { readCards } from "../../src/cards/readCards";

/** An invented squad's sheet of cards, as a coach would fill it in. */
export const SHEET: readonly (readonly unknown[])[] = [
  ["Cards", "", "", "", "", "", "", ""],
  ["smallest step, kg", 2.5, "", "", "lift", "sets", "reps", "reserve"],
  ["bar, kg", 20, "", "", "Back squat", 3, 8, 2],
  ["equation", "epley", "", "", "Bench pull", 2, 10, 3],
  ["", "", "", "", "", "", "", ""],
  ["lifter", "constant", "Back squat, kg", "Bench pull, kg", "Bench press, kg", "", "", ""],
  ["Ines Duarte", "", 102.5, 72.5, 60, "", "", ""],
  ["", "", "", "", "", "", "", ""],
  ["Callum Reid", 31, "145", "101,5", "inj", "", "", ""],
  ["Zoë O’Hara <b>", null, 0, 80, null, "", "", ""],
  ["Emre Sayar", "", "DNS", "", "", "", "", ""],
];

export const squadCards = (): readonly Card[] => readCards(SHEET, "2026-01-05").cards;
