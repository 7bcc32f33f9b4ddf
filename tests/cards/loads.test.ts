import { describe, expect, it } from "vitest";
import { CellError } from "../../src/cells";
import { implementations } from "../../src/functions/implementations";
import { answerTo, chartOf, plannedLoad, sideFor } from "../../src/cards/loads";
import { call } from "../functions/catalogue";
import { cellAt, elementAt } from "../present";
import { squadCards } from "./cards";

/** A cell function as the coach's sheet would call it; the first cell of its result. */
const sheet = (id: string, ...args: unknown[]): unknown => {
  const cell = cellAt(call(id, ...args), 0, 0);
  return cell instanceof CellError ? cell.message : cell;
};

describe.each(squadCards().map((card) => [card.name, card] as const))(
  "the card of %s",
  (_name, card) => {
    it("has in every cell of its charts what LOADCHART has in the sheet", () => {
      for (const lift of card.lifts) {
        const grid = implementations.LOADCHART(
          lift.oneRepMax,
          null,
          null,
          card.increment,
          card.equation,
        );
        const rows = chartOf(card, lift).map(({ reps, loads }) => [
          reps,
          ...loads.map((load) => load ?? ""),
        ]);
        expect(rows).toEqual(grid.slice(1));
      }
    });

    it("has for every planned set what LOADFOR and PLATES have in the sheet", () => {
      for (const planned of card.today) {
        const { oneRepMax } = card.lifts.find(({ name }) => name === planned.lift)!;
        const load = sheet(
          "LOADFOR",
          oneRepMax,
          planned.reps,
          planned.reserve,
          card.increment,
          card.equation,
        );
        expect(plannedLoad(card, planned)).toBe(load);
        const words = sideFor(card, load as number)!.plates.join(" + ");
        expect(words).toBe(sheet("PLATES", load, card.bar));
      }
    });

    it("answers a set as E1RMBAND and NEXTLOAD do", () => {
      for (const [load, reps, reserve] of [
        [80, 8, 2],
        [60, 5, 0],
        [72.5, 10, 3],
      ] as const) {
        const set = { load, reps, reserve, targetReps: 6, targetReserve: 2 };
        const { low, estimate, high, nextLoad } = answerTo(card, set);
        const band = (part: string) =>
          sheet("E1RMBAND", load, reps, reserve, null, card.equation, part);
        const close = [low, estimate, high].map((value) => Number(value.toPrecision(15)));
        expect(close).toEqual(["low", "estimate", "high"].map(band));
        expect(nextLoad).toBe(
          sheet("NEXTLOAD", load, reps, reserve, 6, 2, card.increment, card.equation),
        );
      }
    });
  },
);

describe("plates that do not make the load", () => {
  it("are those of the nearest load below, and a load below the bar has none", () => {
    const card = { ...elementAt(squadCards(), 0), plates: [{ weight: 20 }] };
    expect(sideFor(card, 75)).toEqual({ plates: [20], exact: false });
    expect(sideFor(card, 60)).toEqual({ plates: [20], exact: true });
    expect(sideFor(card, 20)).toEqual({ plates: [], exact: true });
    expect(sideFor(card, 15)).toBeUndefined();
  });
});
