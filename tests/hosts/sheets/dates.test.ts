import { describe, expect, test } from "vitest";
import { serialNumberIn } from "../../../src/hosts/sheets/dates";
import { load } from "./load";

/** 2 March 2026, which every spreadsheet shows for this number. */
const SECOND_OF_MARCH = 46_083;

/** A spreadsheet that stands in this time zone. */
const spreadsheetIn = (timeZone: string) => ({
  SpreadsheetApp: { getActiveSpreadsheet: () => ({ getSpreadsheetTimeZone: () => timeZone }) },
});

describe("a date from Sheets", () => {
  test.each([
    ["Pacific/Auckland", "2026-03-01T11:00:00Z"],
    ["Asia/Kolkata", "2026-03-01T18:30:00Z"],
    ["Europe/Oslo", "2026-03-01T23:00:00Z"],
    ["UTC", "2026-03-02T00:00:00Z"],
    ["America/Los_Angeles", "2026-03-02T08:00:00Z"],
  ])("is the day it is in a spreadsheet of %s", (timeZone, midnight) => {
    expect(serialNumberIn(timeZone)(new Date(midnight))).toBe(SECOND_OF_MARCH);
  });

  test("keeps the time of day", () => {
    expect(serialNumberIn("Europe/Oslo")(new Date("2026-03-02T17:00:00Z"))).toBe(
      SECOND_OF_MARCH + 0.75,
    );
  });

  test("has the same number on both sides of a change of the clocks", () => {
    const serialNumber = serialNumberIn("Europe/Oslo");
    const days = ["2026-03-27T23:00:00Z", "2026-03-28T23:00:00Z", "2026-03-29T22:00:00Z"];
    expect(days.map((day) => serialNumber(new Date(day)))).toEqual([46_109, 46_110, 46_111]);
  });
});

describe("the script", () => {
  const trend = (midnights: string[]) => `SPARE_STRENGTHTREND(
    [${midnights.map((midnight) => `[new Date("${midnight}")]`).join()}],
    [[100], [102.5], [105]], [[5], [5], [5]], [[2], [2], [1]])`;
  const column = (table: unknown) => (table as unknown[][]).slice(1).map(([date]) => date);

  test("reads dates where the spreadsheet is, wherever the script's own clock stands", () => {
    const auckland = ["2026-03-01T11:00:00Z", "2026-03-03T11:00:00Z", "2026-03-05T11:00:00Z"];
    const losAngeles = ["2026-03-02T08:00:00Z", "2026-03-04T08:00:00Z", "2026-03-06T08:00:00Z"];
    const days = [46_083, 46_085, 46_087];
    const inAuckland = load(spreadsheetIn("Pacific/Auckland"));
    const inLosAngeles = load(spreadsheetIn("America/Los_Angeles"));
    expect(column(inAuckland.evaluate(trend(auckland)))).toEqual(days);
    expect(column(inLosAngeles.evaluate(trend(losAngeles)))).toEqual(days);
  });

  test("does not ask where the spreadsheet is unless a cell holds a date", () => {
    let asked = 0;
    const { evaluate } = load({
      SpreadsheetApp: {
        getActiveSpreadsheet: () => {
          asked++;
          return { getSpreadsheetTimeZone: () => "UTC" };
        },
      },
    });
    evaluate("SPARE_E1RM([[100], [80]], [[5], [5]])");
    expect(asked).toBe(0);
    evaluate('SPARE_VOLUMELOAD([[100], [80]], [[5], [5]], undefined, [[new Date(0)], ["x"]])');
    expect(asked).toBe(1);
  });

  test("reads a date by the script's clock where Sheets does not say where it is", () => {
    const { evaluate } = load();
    const days = '["2026-03-02T00:00", "2026-03-04T00:00", "2026-03-06T00:00"]';
    const table = evaluate(
      `SPARE_STRENGTHTREND(${days}.map((day) => [new Date(day)]), [[100], [102.5], [105]], [[5], [5], [5]])`,
    );
    expect(column(table)).toEqual([46_083, 46_085, 46_087]);
  });

  test("says of a date that is none what it says of any number that is none", () => {
    const { evaluate } = load(spreadsheetIn("UTC"));
    expect(evaluate("SPARE_E1RM([[new Date(NaN)], [100]], [[5], [5]])")).toEqual([
      [expect.stringContaining("#NUM!")],
      [116.666666666667],
    ]);
  });
});
