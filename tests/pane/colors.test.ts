import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { describe, expect, it } from "vitest";
import { cellAddress } from "../../src/formula/address";
import { ROOT } from "../../src/tools/paths";
import { contrast, palettes, type Palette } from "./palette";
import { ourSheets } from "../ourSheets";

/* One accent, three greys: `src/pane/colors.css` has them, and nothing a person sees has others. */

const read = (path: string) => readFileSync(join(ROOT, path), "utf8");

/** The least contrast of text with its ground: WCAG 2.2, success criterion 1.4.3. */
const READABLE = 4.5;

const TEXTS = ["ink", "quiet", "accent", "trouble"];
const GROUNDS = ["paper", "wash", "tint"];

function colorOf(palette: Palette, name: string): string {
  const color = palette.get(name);
  if (color === undefined) throw new Error(`no colour --${name}`);
  return color;
}

describe.each(Object.entries(palettes))("the %s colours", (_name, palette) => {
  it("are readable, every text on every ground", () => {
    for (const text of TEXTS) {
      for (const ground of GROUNDS) {
        const measured = contrast(colorOf(palette, text), colorOf(palette, ground));
        expect(measured, `${text} on ${ground}`).toBeGreaterThanOrEqual(READABLE);
      }
    }
    const onAccent = contrast(colorOf(palette, "on-accent"), colorOf(palette, "accent"));
    expect(onAccent).toBeGreaterThanOrEqual(READABLE);
  });

  it("show an edge of what can be typed into: 3 to 1, success criterion 1.4.11", () => {
    const measured = contrast(colorOf(palette, "edge"), colorOf(palette, "paper"));
    expect(measured).toBeGreaterThanOrEqual(3);
  });

  it("are one accent, three greys, two kinds of ink and four grounds", () => {
    expect([...palette.keys()].sort()).toEqual(
      ["accent", "on-accent", "ink", "trouble", "quiet", "edge", "line", ...GROUNDS].sort(),
    );
  });
});

it("knows what contrast is", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 9);
  // Published pair: #767676 is the lightest grey that passes on white.
  expect(contrast("#767676", "#ffffff")).toBeGreaterThan(READABLE);
  expect(contrast("#777777", "#ffffff")).toBeLessThan(READABLE);
});

/** Every file under a folder of the project. */
const filesUnder = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)));

describe("whatever is seen", () => {
  const sources = ["src/pane", "src/hosts", "src/cards", "src/tools"]
    .flatMap(filesUnder)
    .filter((file) => /\.(css|ts|html|svg|webmanifest)$/.test(file))
    .concat("shared/look.json");

  /** Where other colours are right, and why. */
  const elsewhere: Readonly<Record<string, readonly string[]>> = {
    // Shades of the accent, as many as the spreadsheet's own theme wants.
    "src/hosts/page/theme.ts": [
      "#f0f7f7",
      "#e0eeee",
      "#bfdcdc",
      "#93c4c4",
      "#529a9b",
      "#2b7a7d",
      "#0c4b4f",
      "#0a3d40",
      "#082f31",
    ],
    // On paper: ink on white, whatever the printer has.
    "src/hosts/excel/help.css": ["#000000", "#999999"],
  };

  it("has its colours from the one file", () => {
    const known = new Set([...palettes.light.values(), ...palettes.dark.values()]);
    const others = sources.flatMap((file) =>
      (read(file).match(/#[0-9a-f]{6}\b/gi) ?? [])
        .map((hex) => hex.toLowerCase())
        .filter((hex) => !known.has(hex) && !(elsewhere[file] ?? []).includes(hex))
        .map((hex) => `${file} ${hex}`),
    );
    expect(others).toEqual([]);
  });

  it("calls the same colour by the same name on all sheets and in the pictures", () => {
    const { colors } = JSON.parse(read("shared/look.json")) as { colors: Record<string, string> };
    for (const [name, color] of Object.entries(colors)) {
      expect(color, name).toBe(colorOf(palettes.light, name));
    }
    const [, light = "", dark = ""] = read("src/pane/pictures/frame.ts").split(": Theme = {");
    for (const [palette, theme] of [
      [palettes.light, light],
      [palettes.dark, dark],
    ] as const) {
      for (const name of ["ink", "quiet", "line", "paper", "accent"]) {
        expect(theme).toContain(`${name}: "${colorOf(palette, name)}"`);
      }
      expect(theme).toContain(`band: "${colorOf(palette, "tint")}"`);
    }
  });
});

describe.each(["demo", "pane"] as const)("the sheets of shared/%s", (folder) => {
  const cells = ourSheets(folder).sheets.flatMap(([, sheet]) =>
    Object.entries(sheet.cells).flatMap(([row, line]) =>
      Object.entries(line).map(([column, cell]) => {
        const names = new Set(cell.style.split(" "));
        const style = sheet.styles[cell.style];
        if (style === undefined) throw new Error(`${sheet.name} has no style ${cell.style}`);
        return {
          ...cell,
          at: `${sheet.name} ${cellAddress(Number(row), Number(column))}`,
          names,
          look: style,
        };
      }),
    ),
  );
  const tint = colorOf(palettes.light, "tint");
  const paper = colorOf(palettes.light, "paper");

  it("are readable in every cell", () => {
    const grounds = cells.map(({ at, look }) => ({ at, ink: look.color, ground: look.fill }));
    const faint = grounds.filter(
      ({ ink, ground }) => contrast(ink ?? "#000000", ground ?? paper) < READABLE,
    );
    expect(faint).toEqual([]);
  });

  it("tint every number that is there to be changed, and only what is typed", () => {
    expect(cells.filter(({ look }) => look.fill === tint).length).toBeGreaterThan(100);
    const wrong = cells.filter(({ value, formula, names, look }) => {
      const tinted = look.fill === tint;
      const typed = typeof value === "number" && !names.has("heading");
      return (typed && !tinted) || (tinted && formula !== undefined);
    });
    expect(wrong.map(({ at }) => at)).toEqual([]);
  });

  it("never let a result look like an input", () => {
    const both = cells.filter(({ names, look }) => look.fill === tint && names.has("result"));
    expect(both.map(({ at }) => at)).toEqual([]);
  });

  it("have their numbers in the middle of their columns, and only words at the left", () => {
    const askew = cells.filter(
      ({ value, look }) =>
        (typeof value === "number" && look.align !== "center") || look.align === "right",
    );
    expect(askew.map(({ at }) => at)).toEqual([]);
  });
});
