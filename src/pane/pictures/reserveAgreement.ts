import * as Plot from "@observablehq/plot";
import { computeReserveCheck } from "../../functions/reserve/reserveCheck";
import { dealColumns, textOf } from "./columns";
import { compose, plot, sheetFor } from "./frame";
import { apart } from "./apart";
import { intervalOf, type Interval } from "./interval";
import { reading, Unreadable, type Cells, type Picture } from "./picture";
import { number, signed, textWidth } from "./text";

/** Called reserves and what they turned out to be, with what RESERVECHECK says of them. */
export interface ReserveAgreement {
  readonly calls: readonly ReserveCall[];
  readonly n: number;
  readonly dropped: number;
  /** The mean error: above 0 there was more left than said. */
  readonly bias: number;
  readonly biasInterval: Interval | undefined;
  /** The limits of agreement. */
  readonly limits: Interval | undefined;
  /** Whether the lifters were told apart. */
  readonly byLifter: boolean;
}

interface ReserveCall {
  readonly called: number;
  readonly real: number;
  /** True less called. */
  readonly error: number;
}

const CALLS = {
  at: { name: "rep at call", headed: /rep.*at.*call|^rep at/i },
  called: { name: "called reserve", headed: /call.*(reserve|rir)|^(reserve|rir)\b/i },
  failure: { name: "reps to failure", headed: /failure/i },
  lifter: { name: "lifter", headed: /^(lifter|athlete|rower|name)\b/i, optional: true },
} as const;

/** How far called reserves are from the true ones: the agreement plot of Bland and Altman 1986. */
export const reserveAgreement: Picture<ReserveAgreement> = {
  id: "reserve-agreement",
  title: "Called against true reserve",
  describe:
    "Sets taken to failure: rep at call, called reserve, reps to failure, and lifter where several " +
    "lifters have several sets each.",
  isOfOne: () => ["exercise"],
  read: (values) => reading(() => readCalls(values)),

  draw(data, options) {
    const sheet = sheetFor(options);
    const { theme, letters, wide } = sheet;
    const height = wide ? 380 : 250;
    const dots = counted(data.calls);
    const most = Math.max(...dots.map(({ count }) => count));
    const { limits, biasInterval, bias } = data;
    const lines = [
      { at: bias, text: `mean ${signed(bias, 2)}`, dash: undefined },
      ...(limits
        ? [
            { at: limits.low, text: `limit ${signed(limits.low, 2)}`, dash: "6,4" },
            { at: limits.high, text: `limit ${signed(limits.high, 2)}`, dash: "6,4" },
          ]
        : []),
    ];
    const shown = [0, ...lines.map(({ at }) => at), ...dots.map(({ error }) => error)];
    const domain: [number, number] = [Math.min(...shown) - 0.7, Math.max(...shown) + 0.7];
    const margins = { marginTop: 28, marginBottom: 46 };
    const pixels = height - margins.marginTop - margins.marginBottom;
    const within = (value: number) => Math.min(Math.max(value, domain[0]), domain[1]);
    const labels = apart(
      lines,
      letters + 4,
      (at) => (pixels * (domain[1] - at)) / (domain[1] - domain[0]),
    );
    const room = Math.max(...lines.map(({ text }) => textWidth(text, letters, true))) + 10;
    return compose(sheet, this.alt(data), [
      { text: this.title, look: "title" },
      { text: finding(data), look: "finding" },
      {
        plot: plot(sheet, {
          height,
          ...margins,
          marginLeft: 34,
          marginRight: room,
          x: {
            label: "mean of called and true reserve, reps",
            domain: [-0.4, Math.max(...dots.map(({ mean }) => mean)) + 0.6],
            ticks: wide ? 10 : 6,
          },
          y: { label: "true less called reserve, reps", domain, ticks: 6, grid: true },
          r: {
            type: "sqrt",
            domain: [0, Math.max(most, 2)],
            range: [0, most === 1 ? 5 : wide ? 13 : 9],
          },
          marks: [
            biasInterval
              ? Plot.rect([biasInterval], {
                  y1: ({ low }: Interval) => within(low),
                  y2: ({ high }: Interval) => within(high),
                  fill: theme.band,
                })
              : null,
            Plot.ruleY([0], { stroke: theme.ink, strokeWidth: 1 }),
            ...lines.map(({ at, dash }) =>
              Plot.ruleY([at], { stroke: theme.accent, strokeWidth: 2, strokeDasharray: dash }),
            ),
            Plot.dot(dots, {
              x: "mean",
              y: "error",
              r: "count",
              fill: theme.quiet,
              fillOpacity: 0.3,
              stroke: theme.ink,
              strokeWidth: 1,
            }),
            ...labels.map(({ at, text, shift }) =>
              Plot.text([at], {
                y: at,
                text: () => text,
                frameAnchor: "right",
                textAnchor: "start",
                dx: 5,
                dy: shift,
                fontWeight: 600,
                fill: theme.ink,
              }),
            ),
          ],
        }),
      },
      {
        text:
          `Above 0: more was left than said. ${most > 1 ? `A larger dot is more sets, up to ${most}. ` : ""}` +
          `Solid line: mean${biasInterval ? ", on the band of its interval" : ""}.` +
          (limits ? " Dashed: 95% limits of agreement." : ""),
        look: "note",
      },
    ]);
  },

  alt: (data) => `Called against true reserve, an agreement plot. ${finding(data)}`,
};

function finding({ n, dropped, bias, biasInterval, limits, byLifter }: ReserveAgreement): string {
  const mean = `${n} set${n === 1 ? "" : "s"}: true less called ${signed(bias, 2)} reps on average`;
  const interval = biasInterval
    ? ` (${signed(biasInterval.low, 2)} to ${signed(biasInterval.high, 2)})`
    : "";
  const agree = limits
    ? `, 95% of single calls between ${signed(limits.low, 2)} and ${signed(limits.high, 2)}`
    : "";
  const left = dropped > 0 ? ` ${number(dropped, 0)} left out, not complete.` : "";
  return `${mean}${interval}${agree}${byLifter ? ", lifter by lifter" : ""}.${left}`;
}

/** Calls that fall on the same place, as one dot with their number. */
function counted(calls: readonly ReserveCall[]) {
  const places = new Map<string, { mean: number; error: number; count: number }>();
  for (const { called, real, error } of calls) {
    const place = { mean: (called + real) / 2, error, count: 0 };
    const key = `${place.mean} ${error}`;
    places.set(key, places.get(key) ?? place);
    places.get(key)!.count++;
  }
  return [...places.values()].sort((a, b) => b.count - a.count);
}

function readCalls(values: Cells): ReserveAgreement {
  const { columns, headings } = dealColumns(values, CALLS);
  const several = severalLifters(columns.lifter, headings.lifter !== undefined);
  const checked = computeReserveCheck({
    repAtCall: columns.at,
    calledReserve: columns.called,
    repsToFailure: columns.failure,
    lifter: several ? columns.lifter : undefined,
  });
  if (checked === undefined) {
    throw new Unreadable("no row has a rep at the call, a called reserve and reps to failure");
  }
  return {
    calls: checked.calls.map(({ called, error }) => ({ called, real: called + error, error })),
    n: checked.n,
    dropped: checked.dropped,
    bias: checked.bias,
    biasInterval: intervalOf(checked.low, checked.high),
    limits: intervalOf(checked.agreeLow, checked.agreeHigh),
    byLifter: several,
  };
}

/** Whether a column of lifters, under its heading if it has one, names more than one. */
function severalLifters(column: unknown[][] | undefined, isHeaded: boolean): boolean {
  const names = column?.slice(isHeaded ? 1 : 0).map(([cell]) => textOf(cell)) ?? [];
  return new Set(names.filter((name) => name !== "")).size > 1;
}
