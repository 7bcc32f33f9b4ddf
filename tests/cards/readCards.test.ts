import { describe, expect, it } from "vitest";
import { CardProblem } from "../../src/cards/card";
import { readCards } from "../../src/cards/readCards";
import { SHEET, squadCards } from "./cards";

/** The sheet with one cell changed. */
const withCell = (row: number, column: number, value: unknown) =>
  SHEET.map((line, at) =>
    at === row ? line.map((cell, i) => (i === column ? value : cell)) : line,
  );

const problemOf = (cells: readonly (readonly unknown[])[]): string => {
  try {
    readCards(cells, "2026-01-05");
  } catch (error) {
    if (error instanceof CardProblem) return error.message;
    throw error;
  }
  return "no problem";
};

describe("the sheet of cards", () => {
  it("gives each lifter with a maximum a card, in the unit of the headings", () => {
    const [ines, callum] = squadCards();
    expect(ines).toEqual({
      name: "Ines Duarte",
      unit: "kg",
      increment: 2.5,
      bar: 20,
      plates: [25, 20, 15, 10, 5, 2.5, 1.25].map((weight) => ({ weight })),
      equation: "epley",
      lifts: [
        { name: "Back squat", oneRepMax: 102.5 },
        { name: "Bench pull", oneRepMax: 72.5 },
        { name: "Bench press", oneRepMax: 60 },
      ],
      today: [
        { lift: "Back squat", sets: 3, reps: 8, reserve: 2 },
        { lift: "Bench pull", sets: 2, reps: 10, reserve: 3 },
      ],
      made: "2026-01-05",
    });
    expect(callum).toMatchObject({
      equation: 31,
      lifts: [
        { name: "Back squat", oneRepMax: 145 },
        { name: "Bench pull", oneRepMax: 101.5 },
      ],
    });
  });

  it("leaves out a lift without a maximum, and what is planned of it", () => {
    const zoe = squadCards().find(({ name }) => name.startsWith("Zoë"));
    expect(zoe?.lifts).toEqual([{ name: "Bench pull", oneRepMax: 80 }]);
    expect(zoe?.today).toEqual([{ lift: "Bench pull", sets: 2, reps: 10, reserve: 3 }]);
  });

  it("says which lifter gets no card, and passes over a blank row", () => {
    const { cards, notes } = readCards(SHEET, "2026-01-05");
    expect(cards.map(({ name }) => name)).toEqual(["Ines Duarte", "Callum Reid", "Zoë O’Hara <b>"]);
    expect(notes).toEqual(["Emre Sayar: no maximum is given, so there is no card"]);
  });

  it("makes cards of a selection that is only the lifters' table", () => {
    const { cards } = readCards(SHEET.slice(5), "2026-01-05");
    expect(cards).toHaveLength(3);
    expect(cards[0]).toMatchObject({ increment: 2.5, bar: 20, today: [] });
  });

  it("takes pounds as pounds: their plates, their bar, nothing converted", () => {
    const cells = [
      ["lifter", "Back squat (lb)"],
      ["Ines Duarte", 225],
    ];
    const [card] = readCards(cells, "2026-01-05").cards;
    expect(card).toMatchObject({ unit: "lb", bar: 45, increment: 5, lifts: [{ oneRepMax: 225 }] });
  });

  it("counts the plates at hand, and steps by twice the smallest", () => {
    const cells = [
      ["plate", "pairs", ""],
      [20, 2, ""],
      [5, "", ""],
      ["", "", ""],
      ["lifter", "Deadlift, kg", ""],
      ["Ines Duarte", 125, ""],
    ];
    const [card] = readCards(cells, "2026-01-05").cards;
    expect(card).toMatchObject({
      increment: 10,
      plates: [{ weight: 20, pairs: 2 }, { weight: 5 }],
    });
  });

  it("names what is wrong, and where", () => {
    expect(problemOf([["name", "Squat, kg"]])).toContain('no cell says "lifter"');
    expect(problemOf(withCell(5, 2, "Back squat"))).toBe("no problem");
    expect(
      problemOf([
        ["lifter", "Back squat"],
        ["Ines Duarte", 100],
      ]),
    ).toContain("the unit is not said");
    expect(problemOf(withCell(5, 3, "Bench pull, lb"))).toContain(
      "some loads are in kg and some in lb",
    );
    expect(problemOf(withCell(6, 2, "80kg"))).toBe(
      'Ines Duarte: Back squat is text, "80kg"; expected a number',
    );
    expect(problemOf(withCell(6, 2, 1e9))).toContain("Ines Duarte: a maximum is outside");
    expect(problemOf(withCell(3, 1, "guess"))).toContain('equation is "guess"');
    expect(problemOf(withCell(2, 6, ""))).toContain("Back squat is planned without its reps");
  });

  it("says when a planned lift is none of the squad's", () => {
    const { notes } = readCards(withCell(2, 4, "Clean"), "2026-01-05");
    expect(notes).toContain('"Clean" is planned for today, but no column holds its maxima');
  });
});
