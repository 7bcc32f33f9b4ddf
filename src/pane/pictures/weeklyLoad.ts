import * as Plot from "@observablehq/plot";
import { compose, EDGE, plot, sheetFor, type Sheet } from "./frame";
import { reading, type Picture } from "./picture";
import { cut, grouped, named, number, textWidth, withUnit } from "./text";
import { readWeeks, type Week, type WeeklyLoad } from "./weeks";

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
