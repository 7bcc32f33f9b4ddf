import { invertColorByMatrix } from "@univerjs/core";
import { expect, it } from "vitest";
import { contrast, palettes } from "../../pane/palette";
import { ourSheets } from "../../ourSheets";

/*
 * In the dark the page's cells have no colours of ours: the spreadsheet turns round each one that a sheet has, by
 * this function of its own. Its colours of the dark are held to the contrast that those of the light are held to in
 * tests/pane/colors.test.ts: 4.5, WCAG 2.2, success criterion 1.4.3.
 */

function inTheDark(hex: string): string {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16));
  const turned = invertColorByMatrix([red, green, blue]);
  return `#${turned.map((part) => Math.round(part).toString(16).padStart(2, "0")).join("")}`;
}

it("turns paper black and ink bright", () => {
  expect(inTheDark("#ffffff")).toBe("#000000");
  expect(contrast(inTheDark(palettes.light.get("ink")!), "#000000")).toBeGreaterThan(12);
});

it.each(["demo", "pane"] as const)(
  "is readable in the dark in every look of the cells of shared/%s",
  (folder) => {
    const looks = ourSheets(folder).sheets.flatMap(([, { name, styles }]) =>
      Object.entries(styles).map(([style, { color, fill }]) => ({
        at: `${name}, ${style}`,
        measured: contrast(inTheDark(color ?? "#000000"), inTheDark(fill ?? "#ffffff")),
      })),
    );
    expect(looks.length).toBeGreaterThan(50);
    expect(looks.filter(({ measured }) => measured < 4.5)).toEqual([]);
  },
);
