import { expect, test } from "vitest";
import { columnsOfSeveral } from "../../../src/pane/formula/mixed";
import { pictures } from "../../../src/pane/pictures";
import type { CellValue } from "../../../src/pane/port";
import { paneData } from "../../ourSheets";

const { headings } = paneData();

/** What the view asks before it draws these rows: the columns by which the picture would mix them. */
function asked(id: string, values: readonly (readonly CellValue[])[]): string[] {
  const picture = pictures.find((each) => each.id === id)!;
  const selection = { sheet: "Log", address: `A1:H${values.length}`, values };
  const telling = picture.isOfOne?.(values) ?? [];
  return columnsOfSeveral(selection, headings, telling).map(({ heading }) => heading);
}

const LIFTERS = ["Ida", "Jonas", "Ida", "Jonas"];
const LIFTS = ["Squat", "Squat", "Row", "Row"];

const table = (titles: readonly string[], row: (at: number) => readonly CellValue[]) => [
  titles,
  ...LIFTERS.map((_lifter, at) => row(at)),
];

test("a trend from a log of several lifters and lifts asks for both", () => {
  const log = table(["Date", "Lifter", "Lift", "Load", "Reps"], (at) => [
    46_000 + at,
    LIFTERS[at]!,
    LIFTS[at]!,
    100,
    5,
  ]);
  expect(asked("strength-trend", log)).toEqual(["Lifter", "Lift"]);
});

test("pictures with a row an athlete ask for the lift alone", () => {
  const changes = table(["Athlete", "Lift", "Before", "After", "Typical error"], (at) => [
    LIFTERS[at]!,
    LIFTS[at]!,
    100,
    104,
    2,
  ]);
  expect(asked("athlete-changes", changes)).toEqual(["Lift"]);
  const groups = table(["Group", "Lift", "Before", "After"], (at) => ["A", LIFTS[at]!, 100, 104]);
  expect(asked("group-changes", groups)).toEqual(["Lift"]);
  const calls = table(
    ["Lifter", "Lift", "Rep at call", "Called reserve", "Reps to failure"],
    (at) => [LIFTERS[at]!, LIFTS[at]!, 5, 2, 8],
  );
  expect(asked("reserve-agreement", calls)).toEqual(["Lift"]);
});

test("nothing is asked of one lift, nor of pictures that keep their rows apart", () => {
  const one = table(["Athlete", "Lift", "Before", "After"], (at) => [
    LIFTERS[at]!,
    "Squat",
    100,
    104,
  ]);
  expect(asked("athlete-changes", one)).toEqual([]);
  const weeks = table(["Lifter", "Week", "Sets", "Volume load", "Close sets"], (at) => [
    LIFTERS[at]!,
    at,
    10,
    5000,
    4,
  ]);
  expect(asked("weekly-load", weeks)).toEqual([]);
});
