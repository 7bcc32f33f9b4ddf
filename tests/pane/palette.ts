import { readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "../../src/tools/paths";

/** Colours by their names in `src/pane/colors.css`, without the two dashes. */
export type Palette = ReadonlyMap<string, string>;

const text = readFileSync(join(ROOT, "src", "pane", "colors.css"), "utf8");

const paletteIn = (rules: string): Palette =>
  new Map(
    [...rules.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map(([, name = "", hex = ""]) => [
      name,
      hex,
    ]),
  );

const [lightRules = "", darkRules = ""] = text.split("@media");

/** The palette of a page in the light, and of one in the dark. */
export const palettes = { light: paletteIn(lightRules), dark: paletteIn(darkRules) };

/** The relative luminance of WCAG 2.2, "relative luminance". */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const part = parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** The contrast of two colours by WCAG 2.2, from 1 to 21. */
export function contrast(one: string, other: string): number {
  const [a, b] = [luminance(one), luminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}
