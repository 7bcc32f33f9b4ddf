import { format } from "numfmt";
import { describe, expect, it } from "vitest";
import { DATE_FORMAT, digitsFor, fixed, ordinary, shownIn } from "../../../src/cells/shown";
import { lookOf } from "../../../src/pane/insert/look";
import { number } from "../../../src/pane/pictures/text";
import { ourSheets } from "../../ourSheets";

/* One number, the same digits: in a cell, a picture, the Toolbox's preview and the command line's report. */

/** Every number typed on our sheets, with the format of its cell. */
const cells = (["demo", "pane"] as const).flatMap((folder) =>
  ourSheets(folder).sheets.flatMap(([, sheet]) =>
    Object.values(sheet.cells).flatMap((line) =>
      Object.values(line).flatMap(({ value, style }) =>
        typeof value === "number" ? [{ value, format: sheet.styles[style]?.format }] : [],
      ),
    ),
  ),
);

const formats = [
  ...new Set(
    (["demo", "pane"] as const).flatMap((folder) =>
      ourSheets(folder).sheets.flatMap(([, sheet]) =>
        Object.values(sheet.styles).map((style) => style.format ?? "General"),
      ),
    ),
  ),
];

const NUMBERS = [0, 0.0004, 0.00349, 0.5, 0.9951, 0.125, 8.25, 149.3333, 999.95];
const BOTH_SIGNS = [...NUMBERS, 12_500.4, 1_234_567, ...NUMBERS.slice(1).map((size) => -size)];

describe("a number in the Toolbox's preview and in the command line's report", () => {
  // The spreadsheet's own library of formats is the other side of the comparison.
  it.each(formats.filter((pattern) => pattern !== "General" && pattern !== DATE_FORMAT))(
    "has the digits of its cell in the format %s",
    (pattern) => {
      // Chances, the numbers with conditions, are never below 0.
      const values = pattern.startsWith("[") ? NUMBERS : BOTH_SIGNS;
      for (const value of values) expect(shownIn(value, pattern)).toBe(format(pattern, value));
    },
  );

  it("has them for every number of the demo and of the ready sheets", () => {
    const formatted = cells.filter(
      (cell) => cell.format !== undefined && cell.format !== "General",
    );
    expect(formatted.length).toBeGreaterThan(500);
    for (const cell of formatted) {
      expect(shownIn(cell.value, cell.format)).toBe(format(cell.format!, cell.value));
    }
  });

  it("is short in a cell without a format, and in a format that is not ours", () => {
    expect(shownIn(149 + 1 / 3)).toBe("149.333");
    expect(shownIn(149 + 1 / 3, "# ?/?")).toBe(ordinary(149 + 1 / 3));
  });
});

describe("an estimate", () => {
  it.each([[0.4, 1.2], [4.99], [-6.02, 3.1], [12.345], [147.26, 151.8], [12_500.4], [2.005, -0.3]])(
    "has the digits in a picture that it has in the cells that are inserted: %s, %s",
    (...values) => {
      const look = lookOf("estimate", values);
      for (const value of values) {
        const inPicture = number(value, digitsFor(values)).replace("−", "-");
        expect(inPicture.replaceAll(",", "")).toBe(shownIn(value, look.format).replaceAll(",", ""));
      }
    },
  );

  // Excel's rounding, from memory: it goes by the 15 digits that a cell has.
  it("is rounded as a cell rounds it: a half away from zero, and never to a zero with a sign", () => {
    expect(fixed(1.005, 2)).toBe("1.01");
    expect(fixed(-2.675, 2)).toBe("-2.68");
    expect(fixed(-0.004, 2)).toBe("0.00");
  });
});
