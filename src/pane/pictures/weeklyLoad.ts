import * as Plot from "@observablehq/plot";
import { numberAt, readRows } from "../../cells";
import * as quantities from "../../functions/quantities";
import { dealColumns, headingsOf, textOf, withoutBlankEdges } from "./columns";
import { compose, EDGE, plot, sheetFor, type Sheet } from "./frame";
import { reading, Unreadable, type Cells, type Picture } from "./picture";
import { cut, dayText, grouped, named, number, textWidth, withUnit } from "./text";

/** Weeks in the order of the table, each with its block where the table has one. */
export interface WeeklyLoad {
  /** What the weeks are headed. */
  readonly by: string;
  readonly weeks: readonly Week[];
}

interface Week {
  readonly block: string | undefined;
  readonly label: string;
  readonly volumeLoad: number | null;
  readonly closeSets: number | null;
}

const MEASURES = {
  volumeLoad: { name: "volume load", headed: /^volume load/i },
  closeSets: { name: "close sets", headed: /^close sets/i },
} as const;

/** The headings that can follow the keys in a summary of a log. */
const AFTER_KEYS = /^(sets|reps|volume load|close sets)\b/i;

/** How much was lifted each week, and how many sets came close to failure. */
export const weeklyLoad: Picture<WeeklyLoad> = {
  id: "weekly-load",
  title: "Volume load and close sets",
  describe:
    "The table of LOGSUMMARY with its headings, summed up by week, or by block and week: the keys " +
    "first, then volume load and close sets among the other columns.",
  read: (values) => reading(() => readWeeks(values)),

  draw(data, options) {
    const sheet = sheetFor(options);
    const { theme } = sheet;
    const bars = data.weeks.map((week, at) => ({ ...week, at }));
    const common = axisOf(sheet, data);
    const top = Math.max(1, ...bars.map(({ closeSets }) => closeSets ?? 0));
    const slot = common.slot;
    const counts = sheet.letters - 1;
    const labelled = slot > textWidth(number(top, 0), counts) + 1.5;
    const load = plot(sheet, {
      ...common.panel,
      height: (sheet.wide ? 210 : 150) + common.blockRoom,
      marginTop: 24 + common.blockRoom,
      marginBottom: 8,
      y: {
        label: named("volume load", options.units),
        grid: true,
        ticks: 4,
        zero: true,
        nice: true,
        tickFormat: (value: number) => whole(value),
      },
      marks: [
        ...common.blocks,
        Plot.rect(bars, {
          x1: ({ at }) => at - 0.38,
          x2: ({ at }) => at + 0.38,
          y1: 0,
          y2: "volumeLoad",
          fill: theme.accent,
        }),
        Plot.ruleY([0], { stroke: theme.ink }),
      ],
    });
    const sets = plot(sheet, {
      ...common.panel,
      height: (sheet.wide ? 130 : 96) + common.labelRoom,
      marginTop: 30,
      marginBottom: common.labelRoom,
      y: {
        label: "close sets, number",
        grid: true,
        ticks: 3,
        domain: [0, top * 1.2],
        nice: true,
      },
      marks: [
        ...common.rules,
        Plot.ruleX(bars, {
          x: "at",
          y1: 0,
          y2: "closeSets",
          stroke: theme.quiet,
          strokeWidth: 1.5,
        }),
        Plot.dot(bars, {
          x: "at",
          y: "closeSets",
          r: Math.min(3.5, Math.max(1.5, slot * 0.3)),
          symbol: "diamond",
          fill: theme.paper,
          stroke: theme.ink,
          strokeWidth: 1.5,
        }),
        labelled
          ? Plot.text(bars, {
              x: "at",
              y: "closeSets",
              text: ({ closeSets }) => (closeSets === null ? "" : number(closeSets, 0)),
              dy: -10,
              fontSize: counts,
              fill: theme.ink,
              stroke: theme.paper,
              strokeWidth: 3,
            })
          : null,
        Plot.ruleY([0], { stroke: theme.ink }),
        common.axis,
      ],
    });
    return compose(sheet, this.alt(data), [
      { text: this.title, look: "title" },
      { text: finding(data, options.units), look: "finding" },
      { plot: load },
      { plot: sets },
      { text: "Bars: volume load. Diamonds: sets close to failure.", look: "note" },
    ]);
  },

  alt: (data) => `Volume load and close sets by ${data.by}. ${finding(data, undefined)}`,
};

/** What both panels share: the places of the weeks, their labels, and where blocks begin. */
function axisOf(sheet: Sheet, { weeks, by }: WeeklyLoad) {
  const { theme, letters } = sheet;
  const most = Math.max(...weeks.map(({ volumeLoad }) => volumeLoad ?? 0));
  // The axis ends on a round number, which can have a digit more.
  const marginLeft = Math.ceil(textWidth(whole(most * 2), letters)) + 10;
  const slot = (sheet.width - 2 * EDGE - marginLeft - 6) / weeks.length;
  const longest = sheet.wide ? 110 : 80;
  const labels = weeks.map(({ label }) => cut(label, longest, letters));
  const widest = Math.max(...labels.map((label) => textWidth(label, letters)));
  // Numbers of weeks can be left out between others; names of rowers cannot, so they are turned.
  const turned = widest > slot - 3 && widest > 4 * letters && slot >= letters;
  const step = turned ? 1 : Math.max(1, Math.ceil((widest + 5) / slot));
  const ticks = weeks.map((_, at) => at).filter((at) => at % step === 0);
  const starts = weeks.flatMap(({ block }, at) =>
    block !== undefined && block !== weeks[at - 1]?.block ? [{ at, block }] : [],
  );
  const blockRoom = starts.length > 0 ? 18 : 0;
  const rules = starts
    .filter(({ at }) => at > 0)
    .map(({ at }) => Plot.ruleX([at - 0.5], { stroke: theme.quiet, strokeDasharray: "2,3" }));
  const names = starts.map(({ at, block }, place) => {
    const length = (starts[place + 1]?.at ?? weeks.length) - at;
    return { at: at - 0.45, name: cut(block, length * slot - 2, letters) };
  });
  return {
    slot,
    blockRoom,
    labelRoom: turned ? Math.ceil(widest * 0.72) + 26 : 44,
    rules,
    blocks: [
      ...rules,
      Plot.text(names, {
        x: "at",
        text: "name",
        frameAnchor: "top",
        textAnchor: "start",
        lineAnchor: "bottom",
        dy: -5,
        fontWeight: 600,
        fill: theme.ink,
      }),
    ],
    axis: Plot.axisX(ticks, {
      tickFormat: (at: number) => labels[at],
      tickRotate: turned ? -45 : 0,
      tickSize: turned ? 3 : 5,
      label: by,
      labelArrow: "none",
      labelOffset: turned ? Math.ceil(widest * 0.72) + 18 : 34,
    }),
    panel: {
      marginLeft,
      marginRight: 6,
      x: { axis: null, type: "linear", domain: [-0.5, weeks.length - 0.5] },
    } satisfies Plot.PlotOptions,
  };
}

const whole = (value: number) => grouped(number(value, 0));

function finding({ weeks, by }: WeeklyLoad, units: string | undefined): string {
  const most = (measure: "volumeLoad" | "closeSets") =>
    weeks.reduce((best, week) => ((week[measure] ?? 0) > (best[measure] ?? 0) ? week : best));
  const load = most("volumeLoad");
  const close = most("closeSets");
  const place = ({ block, label }: Week) =>
    `${by} ${label}${block === undefined ? "" : ` of ${block}`}`;
  return (
    `Most volume load: ${withUnit(whole(load.volumeLoad ?? 0), units)}, ${place(load)}. ` +
    `Most close sets: ${number(close.closeSets ?? 0, 0)}, ${place(close)}.`
  );
}

function readWeeks(values: Cells): WeeklyLoad {
  const cells = withoutBlankEdges(values);
  const headings = headingsOf(cells);
  const keys = headings?.findIndex((heading) => AFTER_KEYS.test(heading)) ?? -1;
  if (headings === undefined || keys === -1) {
    throw new Unreadable(
      "found no heading volume load or close sets; expected the table of LOGSUMMARY with its headings",
    );
  }
  if (keys === 0 || keys > 2) {
    throw new Unreadable(
      `found ${keys === 0 ? "no column" : `${keys} columns`} before the sums; ` +
        "expected the week, or the block and the week",
    );
  }
  const { columns } = dealColumns(cells, MEASURES);
  const { count, numbers } = readRows({
    volumeLoad: {
      given: columns.volumeLoad,
      quantity: quantities.atLeast0("volume load"),
    },
    closeSets: { given: columns.closeSets, quantity: quantities.atLeast0("close sets") },
  });
  const weeks: Week[] = [];
  for (let row = 0; row < count; row++) {
    const key = (cells[row + cells.length - count] ?? []).slice(0, keys).map(keyText);
    const volumeLoad = numberAt(numbers.volumeLoad, row);
    const closeSets = numberAt(numbers.closeSets, row);
    if (key.every((part) => part === "") || (volumeLoad === null && closeSets === null)) continue;
    const [label = "", block] = key.reverse();
    weeks.push({ block, label, volumeLoad, closeSets });
  }
  if (weeks.length === 0) {
    throw new Unreadable("no row has a key and a sum; expected the table of LOGSUMMARY");
  }
  return { by: headings[keys - 1]?.toLowerCase() || "week", weeks };
}

/** A week named by its first day is shown as one. */
function keyText(cell: unknown): string {
  return typeof cell === "number" && cell >= FIRST_DATE
    ? dayText(cell).replace(/ \d+$/, "")
    : textOf(cell);
}

/** The serial number of 6 July 2009: weeks are not numbered that high. */
const FIRST_DATE = 40_000;
