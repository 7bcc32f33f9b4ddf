import * as Plot from "@observablehq/plot";
import { numberAt, readRows } from "../../cells";
import * as quantities from "../../functions/quantities";
import { computeStrengthTrend } from "../../functions/strength/strengthTrend";
import { dealColumns, hasHeadings, unitIn } from "./columns";
import { compose, domainOf, plot, sheetFor } from "./frame";
import { reading, Unreadable, type Cells, type Picture } from "./picture";
import type { TrendSettings } from "./settings";
import { dayText, digitsFor, named, number, textWidth, toDate, withUnit } from "./text";

/** The days of a trend, earliest first. */
export interface StrengthTrend {
  readonly days: readonly TrendDay[];
  readonly units: string | undefined;
}

interface TrendDay {
  /** The day's serial number. */
  readonly date: number;
  readonly oneRepMax: number;
  readonly low: number;
  readonly high: number;
}

const LOG = {
  date: { name: "date", headed: /^(date|day)\b/i },
  load: { name: "load", headed: /^(load|weight)\b/i },
  reps: { name: "reps", headed: /^reps$/i },
  reserve: { name: "reserve", headed: /reserve|^rir\b/i, optional: true },
} as const;

const TABLE = {
  date: { name: "date", headed: /^(date|day)\b/i },
  oneRepMax: { name: "one-rep max", headed: /one-rep max|1RM/i },
  low: { name: "low", headed: /^low\b/i },
  high: { name: "high", headed: /^high\b/i },
} as const;

/** Today's strength from every logged set, with the interval of each day. */
export const strengthTrend: Picture<StrengthTrend> = {
  id: "strength-trend",
  title: "Strength trend",
  describe:
    "The table of STRENGTHTREND (date, one-rep max, low, high), or one lifter's sets of one lift " +
    "under the headings date, load, reps and reserve.",
  hasSettings: true,
  isOfOne: (values) => (hasHeadings(values, LOG) ? ["lifter", "exercise"] : []),

  read: (values, settings) =>
    reading(() => (hasHeadings(values, LOG) ? ofLog(values, settings) : ofTable(values))),

  draw(data, options) {
    const sheet = sheetFor(options);
    const { theme, letters } = sheet;
    const units = options.units ?? data.units;
    const days = data.days.map((day) => ({ ...day, date: toDate(day.date) }));
    const today = days.slice(-1);
    const digits = digitsFor(days.map(({ high }) => high));
    const [todayLabel = ""] = today.map(({ oneRepMax }) => number(oneRepMax, digits));
    return compose(sheet, this.alt({ ...data, units }), [
      { text: this.title, look: "title" },
      { text: finding({ ...data, units }), look: "finding" },
      {
        plot: plot(sheet, {
          height: sheet.wide ? 340 : 220,
          marginTop: 26,
          marginLeft: 42,
          marginRight: textWidth(todayLabel, letters + 1, true) + 10,
          marginBottom: 46,
          x: { type: "utc", label: "date", ticks: sheet.wide ? 8 : 4 },
          y: {
            label: named("one-rep max", units),
            domain: domainOf(days.flatMap(({ low, high }) => [low, high])),
            nice: true,
            ticks: 5,
            grid: true,
          },
          marks: [
            Plot.areaY(days, { x: "date", y1: "low", y2: "high", fill: theme.band }),
            Plot.lineY(days, { x: "date", y: "low", stroke: theme.quiet, strokeDasharray: "3,3" }),
            Plot.lineY(days, { x: "date", y: "high", stroke: theme.quiet, strokeDasharray: "3,3" }),
            Plot.lineY(days, { x: "date", y: "oneRepMax", stroke: theme.accent, strokeWidth: 2 }),
            Plot.dot(days, { x: "date", y: "oneRepMax", r: 2.5, fill: theme.accent }),
            Plot.text(today, {
              x: "date",
              y: "oneRepMax",
              text: () => todayLabel,
              dx: 6,
              textAnchor: "start",
              fontWeight: 600,
              fontSize: letters + 1,
              fill: theme.ink,
            }),
          ],
        }),
      },
      {
        text: "Line: the one-rep max of each day with sets that count. Band, dashed: its interval.",
        look: "note",
      },
    ]);
  },

  alt: (data) =>
    `Strength trend over ${data.days.length} day${data.days.length === 1 ? "" : "s"}. ${finding(data)}`,
};

function finding({ days, units }: StrengthTrend): string {
  const digits = digitsFor(days.map(({ high }) => high));
  const say = ({ date, oneRepMax, low, high }: TrendDay) =>
    `${withUnit(number(oneRepMax, digits), units)} (${number(low, digits)} to ` +
    `${number(high, digits)}) on ${dayText(date)}`;
  const [first, ...later] = days.map(say);
  const last = later.at(-1);
  return last === undefined ? `${first}.` : `From ${first} to ${last}.`;
}

function ofLog(values: Cells, settings: TrendSettings = {}): StrengthTrend {
  const { columns, headings } = dealColumns(values, LOG);
  const { table } = computeStrengthTrend({ ...columns, ...settings });
  return { days: table, units: unitIn(headings.load) };
}

function ofTable(values: Cells): StrengthTrend {
  const { columns, headings } = dealColumns(values, TABLE);
  const { count, numbers } = readRows({
    date: { given: columns.date, quantity: quantities.above0("date", "a date") },
    oneRepMax: { given: columns.oneRepMax, quantity: quantities.load("one-rep max") },
    low: { given: columns.low, quantity: quantities.load("low") },
    high: { given: columns.high, quantity: quantities.load("high") },
  });
  const days: TrendDay[] = [];
  for (let row = 0; row < count; row++) {
    const date = numberAt(numbers.date, row);
    const oneRepMax = numberAt(numbers.oneRepMax, row);
    const low = numberAt(numbers.low, row);
    const high = numberAt(numbers.high, row);
    if (date === null || oneRepMax === null || low === null || high === null) continue;
    if (low > oneRepMax || oneRepMax > high) {
      throw new Unreadable(
        "a one-rep max lies outside its low and high; " +
          "expected the columns date, one-rep max, low, high of STRENGTHTREND",
      );
    }
    days.push({ date, oneRepMax, low, high });
  }
  if (days.length === 0) {
    throw new Unreadable(
      "no row has a date, a one-rep max, a low and a high; expected the table of STRENGTHTREND",
    );
  }
  days.sort((a, b) => a.date - b.date);
  return { days, units: unitIn(headings.oneRepMax) };
}
