import * as Plot from "@observablehq/plot";
import { computeGroupChange } from "../../functions/testing/groupChange";
import { dealColumns, unitIn } from "./columns";
import { compose, domainOf, EDGE, plot, sheetFor, type Sheet } from "./frame";
import { intervalOf, numberOf, type Interval } from "./interval";
import { reading, type Cells, type Picture } from "./picture";
import { digitsFor, named, signed, withUnit } from "./text";

/** Two groups' changes, and the difference between them, as GROUPCHANGE has them. */
export interface GroupChanges {
  readonly groups: readonly [Group, Group];
  /** A less B; from the same score before where the data allow it. */
  readonly difference: Mean & { readonly adjusted: boolean };
  readonly reading: string;
  readonly units: string | undefined;
}

interface Mean {
  readonly mean: number;
  readonly interval: Interval | undefined;
}

interface Group extends Mean {
  readonly name: string;
  readonly changes: readonly number[];
  /** Athletes of the group without a complete pair. */
  readonly lost: number;
}

const COLUMNS = {
  group: { name: "group", headed: /^(group|crew|team|squad|arm)\b/i },
  before: { name: "before", headed: /before|^pre\b/i },
  after: { name: "after", headed: /after|^post\b/i },
} as const;

/** Whether one group gained more than the other: the interval between them decides. */
export const groupChanges: Picture<GroupChanges> = {
  id: "group-changes",
  title: "Two groups' changes",
  describe: "A row an athlete: group (two of them), score before, score after.",
  isOfOne: () => ["exercise"],
  read: (values) => reading(() => readGroups(values)),

  draw(data, options) {
    const sheet = sheetFor(options);
    const units = options.units ?? data.units;
    const [a, b] = data.groups;
    const { difference } = data;
    const shown = [a, b, difference].flatMap(({ mean, interval }) => [
      mean,
      interval?.low ?? mean,
      interval?.high ?? mean,
    ]);
    const domain = domainOf([0, ...shown, ...a.changes, ...b.changes]);
    const digits = digitsFor(shown);
    const say = ({ mean, interval }: Mean) =>
      withUnit(signed(mean, digits), units) +
      (interval ? ` (${signed(interval.low, digits)} to ${signed(interval.high, digits)})` : "");
    const group = (one: Group, symbol: "circle" | "triangle") => [
      {
        text: `${one.name}, ${one.changes.length} athlete${one.changes.length === 1 ? "" : "s"}: ${say(one)}`,
        look: "label" as const,
      },
      { plot: row(sheet, domain, one, one.changes, symbol) },
    ];
    return compose(sheet, this.alt({ ...data, units }), [
      { text: this.title, look: "title" },
      { text: `${sentence(data.reading)}`, look: "finding" },
      ...group(a, "circle"),
      { space: 4 },
      ...group(b, "triangle"),
      { space: 4 },
      {
        text: `${a.name} less ${b.name}${difference.adjusted ? ", from the same score before" : ""}: ${say(difference)}`,
        look: "label",
      },
      { plot: row(sheet, domain, difference, [], "diamond") },
      { plot: axis(sheet, domain, named("change", units)) },
      {
        text: `Small marks: athletes. Large mark and line: mean and its interval.${lostText(data)}`,
        look: "note",
      },
    ]);
  },

  alt: ({ groups: [a, b], reading, difference }) => {
    const digits = digitsFor([a.mean, b.mean, difference.mean]);
    return (
      `Changes of ${a.name} and ${b.name}: mean ${signed(a.mean, digits)} and ` +
      `${signed(b.mean, digits)}, difference ${signed(difference.mean, digits)}. ${sentence(reading)}`
    );
  },
};

const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

const lostText = ({ groups }: GroupChanges) => {
  const lost = groups.filter((group) => group.lost > 0);
  return lost.length === 0
    ? ""
    : ` Not drawn, no complete pair: ${lost.map(({ name, lost }) => `${lost} of ${name}`).join(", ")}.`;
};

const MARGINS = { marginLeft: 12, marginRight: 16 };

type Shape = "circle" | "triangle" | "diamond";

/** One row: the athletes stacked where they fall together, and the mean with its interval above them. */
function row(
  sheet: Sheet,
  domain: [number, number],
  { mean, interval }: Mean,
  changes: readonly number[],
  symbol: Shape,
): SVGSVGElement {
  const { theme } = sheet;
  const radius = sheet.wide ? 3.5 : 2.8;
  const inner = sheet.width - 2 * EDGE - MARGINS.marginLeft - MARGINS.marginRight;
  const dots = stacked(changes, ((domain[1] - domain[0]) / inner) * (2 * radius + 1.5));
  const levels = Math.max(0, ...dots.map(({ level }) => level + 1));
  const step = 2 * radius + 2;
  const height = 30 + levels * step;
  const stroke = symbol === "diamond" ? theme.accent : theme.ink;
  const fill = symbol === "triangle" ? theme.paper : stroke;
  return plot(sheet, {
    height,
    ...MARGINS,
    marginTop: 0,
    marginBottom: 0,
    x: { axis: null, domain },
    y: { axis: null, domain: [0, height], range: [height, 0] },
    marks: [
      Plot.ruleX([0], { stroke: theme.ink, strokeWidth: 1, strokeDasharray: "1,2" }),
      interval
        ? Plot.ruleY([height - 15], {
            x1: interval.low,
            x2: interval.high,
            stroke,
            strokeWidth: 2.5,
          })
        : null,
      interval
        ? Plot.tickX([interval.low, interval.high], {
            x: (end: number) => end,
            y: undefined,
            insetTop: 9,
            insetBottom: height - 21,
            stroke,
            strokeWidth: 2.5,
          })
        : null,
      Plot.dot([mean], { x: mean, y: height - 15, r: 6, symbol, fill, stroke, strokeWidth: 2 }),
      Plot.dot(dots, {
        x: "change",
        y: ({ level }: { level: number }) => 4 + radius + level * step,
        r: radius,
        symbol,
        fill: symbol === "triangle" ? theme.paper : theme.quiet,
        stroke: theme.quiet,
        strokeWidth: 1.2,
      }),
    ],
  });
}

/** Puts athletes with nearly the same change on top of one another. */
function stacked(changes: readonly number[], near: number) {
  const lastOf: number[] = [];
  return [...changes]
    .sort((a, b) => a - b)
    .map((change) => {
      const free = lastOf.findIndex((last) => change - last >= near);
      const level = free === -1 ? lastOf.length : free;
      lastOf[level] = change;
      return { change, level };
    });
}

const axis = (sheet: Sheet, domain: [number, number], label: string) =>
  plot(sheet, {
    height: 46,
    ...MARGINS,
    marginTop: 1,
    marginBottom: 44,
    x: { domain, label, ticks: sheet.wide ? 9 : 5 },
    y: { axis: null },
    marks: [Plot.ruleY([0], { stroke: sheet.theme.ink })],
  });

function readGroups(values: Cells): GroupChanges {
  const { columns, headings } = dealColumns(values, COLUMNS);
  const result = computeGroupChange(columns);
  return {
    groups: [
      {
        name: result.groupA,
        changes: result.changesA,
        mean: result.changeA,
        interval: intervalOf(result.lowA, result.highA),
        lost: result.lostA,
      },
      {
        name: result.groupB,
        changes: result.changesB,
        mean: result.changeB,
        interval: intervalOf(result.lowB, result.highB),
        lost: result.lostB,
      },
    ],
    difference: differenceIn(result),
    reading: result.reading,
    units: unitIn(headings.before) ?? unitIn(headings.after),
  };
}

/** The adjusted difference decides; where there is none to trust, the plain one stands in. */
function differenceIn(result: ReturnType<typeof computeGroupChange>): GroupChanges["difference"] {
  const mean = numberOf(result.adjustedDifference);
  const interval = intervalOf(result.adjustedLow, result.adjustedHigh);
  if (mean !== undefined && interval) return { mean, interval, adjusted: true };
  return {
    mean: result.difference,
    interval: intervalOf(result.low, result.high),
    adjusted: false,
  };
}
