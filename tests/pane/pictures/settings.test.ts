import { describe, expect, it } from "vitest";
import { isProblem, pictures } from "../../../src/pane/pictures";
import { trendSettings } from "../../../src/pane/pictures/settings";
import { strengthTrend } from "../../../src/pane/pictures/strengthTrend";
import { fittingPictures } from "../../../src/pane/view/pictureOffers";
import { implementations } from "../../../src/functions/implementations";
import { elementAt } from "../../present";
import { setsOf } from "./demo";
import { demoSelections } from "./selections";
import { paneData } from "../../ourSheets";

const { catalogue } = paneData();

const portWith = (formula: string) => ({
  formulasOn: () => Promise.resolve([{ address: "G7", formula }]),
  readRange: (reference: string) => Promise.resolve(reference === "K9" ? [[0.63]] : [[0.84]]),
});

describe("a trend drawn from a log", () => {
  const sets = setsOf("Callum Reid", "Back squat");

  it("says what the sheet's own trend of it says", async () => {
    const found = await trendSettings(
      "Log",
      catalogue,
      portWith('=SPARE.STRENGTHTREND(B7:B90, C7:C90, D7:D90, E7:E90&"", K9, K10, , , 0.9)'),
    );
    expect(found).toEqual({
      address: "G7",
      settings: { reserveBias: [[0.63]], reserveSd: [[0.84]], confidence: [[0.9]] },
    });
    const drawn = strengthTrend.read(sets, found!.settings);
    if (isProblem(drawn)) throw new Error(drawn.problem);
    const column = (at: number) => sets.map((row) => [at === 3 ? String(row[at] ?? "") : row[at]]);
    const table = implementations.STRENGTHTREND(
      column(0),
      column(1),
      column(2),
      column(3),
      [[0.63]],
      [[0.84]],
      null,
      null,
      [[0.9]],
    ) as unknown[][];
    const { date, oneRepMax, low, high } = elementAt(drawn.days, drawn.days.length - 1);
    expect([date, oneRepMax, low, high]).toEqual(table.at(-1));
    expect(strengthTrend.read(sets)).not.toEqual(drawn);
  });

  it("takes the usual settings where no trend stands on the sheet, or one that works its own out", async () => {
    for (const formula of ["=SUM(A1:A9)", "=SPARE.STRENGTHTREND(B7:B90, C7:C90, D7:D90, , K9*2)"]) {
      expect(await trendSettings("Log", catalogue, portWith(formula))).toBeUndefined();
    }
  });
});

describe("the pictures offered for a selection", () => {
  it.each(demoSelections)("have $id among them where it fits", ({ id, values }) => {
    const fitting = fittingPictures({ values: values as never }).map(({ picture }) => picture.id);
    expect(fitting).toContain(id);
  });

  it("are none for a cell alone", () => {
    expect(fittingPictures({ values: [[1]] })).toEqual([]);
    expect(pictures.length).toBeGreaterThan(0);
  });
});
