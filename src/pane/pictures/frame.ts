import * as Plot from "@observablehq/plot";
import type { DrawOptions } from "./picture";
import { cut, textWidth, wrap } from "./text";

/** The colours of a picture, those of `colors.css`, for light and for dark pages. */
export interface Theme {
  readonly ink: string;
  readonly quiet: string;
  readonly line: string;
  readonly paper: string;
  readonly accent: string;
  /** An interval's ground, the tint, light enough for what is drawn on it. */
  readonly band: string;
}

const LIGHT: Theme = {
  ink: "#1d2526",
  quiet: "#566364",
  line: "#c9d3d3",
  paper: "#ffffff",
  accent: "#0e5a5e",
  band: "#dbeaea",
};

const DARK: Theme = {
  ink: "#e6ecec",
  quiet: "#a9b7b7",
  line: "#3b4849",
  paper: "#151b1c",
  accent: "#7cc6c6",
  band: "#2a4647",
};

/** What a picture is drawn on: its size, its colours, and the size of its letters. */
export interface Sheet {
  readonly document: Document;
  readonly width: number;
  readonly theme: Theme;
  /** The size of the letters in a plot, in pixels. */
  readonly letters: number;
  /** Whether there is room for what a pane leaves out. */
  readonly wide: boolean;
}

/** From this width on a picture is for a page, not for a pane. */
const WIDE = 560;

export function sheetFor({ width, dark, document }: DrawOptions): Sheet {
  const wide = width >= WIDE;
  return { document, width, theme: dark ? DARK : LIGHT, letters: wide ? 13 : 11, wide };
}

/** A part of a picture, from top to bottom. */
export type Block =
  | { readonly text: string; readonly look: "title" | "finding" | "label" | "note" }
  | { readonly plot: SVGSVGElement }
  | { readonly space: number };

/** The room at the picture's left and right. */
export const EDGE = 8;

/** A plot in the picture's colours and letters, as wide as the picture between its edges. */
export function plot(sheet: Sheet, options: Plot.PlotOptions): SVGSVGElement {
  const svg = Plot.plot({
    document: sheet.document,
    width: sheet.width - 2 * EDGE,
    ...options,
    style: { fontSize: `${sheet.letters}px`, background: "none", overflow: "visible" },
  }) as SVGSVGElement;
  // A strict content security policy would refuse it, and it says nothing that this picture needs.
  svg.querySelectorAll("style").forEach((style) => style.remove());
  return svg;
}

/** What lies between a plot and the texts at the ends of its rows. */
const GAP = 8;

/** The room that names at the left of a plot take, at most a share of the picture. */
export function roomForNames(sheet: Sheet, names: readonly string[], share: number): number {
  return Math.min(roomForSayings(sheet, names), Math.floor(sheet.width * share));
}

/** The room that what the rows say takes at the right of a plot; it is never cut. */
export function roomForSayings({ letters }: Sheet, sayings: readonly string[]): number {
  return Math.ceil(Math.max(0, ...sayings.map((text) => textWidth(text, letters)))) + GAP;
}

/**
 * The texts at both ends of each row of a plot, outside what is drawn in it: its name, cut where it is longer than
 * the room at the left, and what it says.
 */
export function rowEnds<Row extends { readonly name: string }>(
  { theme, letters }: Sheet,
  rows: readonly Row[],
  { left, right }: { readonly left: number; readonly right: number },
  sayingOf: (row: Row) => string,
): Plot.Markish[] {
  return [
    Plot.text(rows, {
      y: "at",
      text: ({ name }: Row) => cut(name, left - GAP, letters),
      frameAnchor: "left",
      textAnchor: "start",
      dx: -left,
      fill: theme.ink,
    }),
    Plot.text(rows, {
      y: "at",
      text: sayingOf,
      frameAnchor: "right",
      textAnchor: "end",
      dx: right,
      fill: theme.ink,
    }),
  ];
}

const SVG = "http://www.w3.org/2000/svg";

/** Puts the parts under one another into one drawing, which is one image to a screen reader. */
export function compose(sheet: Sheet, alt: string, blocks: readonly Block[]): SVGSVGElement {
  const { document, width, theme } = sheet;
  const make = (name: string, attributes: Readonly<Record<string, string | number>>) => {
    const element = document.createElementNS(SVG, name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
    return element;
  };
  const parts: Element[] = [];
  let y = EDGE;
  for (const block of blocks) {
    if ("space" in block) y += block.space;
    else if ("plot" in block) {
      const height = Number(block.plot.getAttribute("height"));
      block.plot.setAttribute("x", String(EDGE));
      block.plot.setAttribute("y", String(y));
      parts.push(block.plot);
      y += height;
    } else {
      const look = looks(sheet)[block.look];
      const bold = look.weight > 500;
      y += look.before;
      for (const line of wrap(block.text, width - 2 * EDGE, look.size, bold)) {
        y += look.size * 1.35;
        const text = make("text", {
          x: EDGE,
          y: y - look.size * 0.3,
          fill: look.fill,
          "font-size": look.size,
          "font-weight": look.weight,
        });
        text.textContent = line;
        parts.push(text);
      }
      y += look.after;
    }
  }
  const height = Math.ceil(y + EDGE);
  const svg = make("svg", {
    xmlns: SVG,
    width,
    height,
    viewBox: `0 0 ${width} ${height}`,
    role: "img",
    "aria-label": alt,
    "font-family": "system-ui, 'Segoe UI', sans-serif",
    color: theme.ink,
    fill: theme.ink,
  });
  svg.append(make("rect", { width, height, fill: theme.paper }), ...parts);
  return svg as SVGSVGElement;
}

const looks = ({ theme, wide }: Sheet) => ({
  title: { size: wide ? 18 : 14, weight: 600, fill: theme.ink, before: 0, after: 2 },
  finding: { size: wide ? 14 : 12, weight: 400, fill: theme.ink, before: 0, after: 6 },
  label: { size: wide ? 13 : 11.5, weight: 600, fill: theme.ink, before: 0, after: 0 },
  note: { size: wide ? 12 : 11, weight: 400, fill: theme.quiet, before: 3, after: 0 },
});

/** A domain around numbers, with some room at both ends. */
export function domainOf(values: readonly number[], room = 0.06): [number, number] {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const spare = (high - low || Math.abs(high) || 1) * room;
  return [low - spare, high + spare];
}
