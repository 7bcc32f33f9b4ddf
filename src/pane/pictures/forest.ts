import * as Plot from "@observablehq/plot";
import { numberAt, readRows } from "../../cells";
import * as quantities from "../../functions/quantities";
import { PoolMethodChoice } from "../../functions/studies/choices";
import { computePoolStudies } from "../../functions/studies/poolStudies";
import { dealColumns, textOf, unitIn } from "./columns";
import { compose, domainOf, plot, roomForNames, roomForSayings, rowEnds, sheetFor } from "./frame";
import { intervalOf, numberOf, type Interval } from "./interval";
import { reading, Unreadable, type Cells, type Picture } from "./picture";
import { digitsFor, named, signed, withUnit } from "./text";

/** Studies and what POOLSTUDIES makes of them. */
export interface Forest {
  readonly studies: readonly Study[];
  /** All together; there is none for a single study. */
  readonly pooled: (Interval & { readonly estimate: number }) | undefined;
  /** Where one more study would lie. */
  readonly prediction: Interval | undefined;
  /** The spread of true effects between studies. */
  readonly betweenSd: number | undefined;
  readonly units: string | undefined;
}

interface Study extends Interval {
  readonly name: string;
  readonly effect: number;
  readonly standardError: number;
}

const COLUMNS = {
  study: { name: "study", headed: /^(study|author|paper|name)\b/i },
  effect: { name: "effect", headed: /^(?!.*(error|\bse\b)).*(effect|estimate)/i },
  standardError: { name: "standard error", headed: /standard error|^se\b/i },
} as const;

/** Published studies, all together, and where one more would lie. */
export const forest: Picture<Forest> = {
  id: "forest",
  title: "Studies, pooled",
  describe: "A row a study: study, effect, standard error.",
  read: (values) => reading(() => readStudies(values)),

  draw(data, options) {
    const sheet = sheetFor(options);
    const { theme, letters, wide } = sheet;
    const units = options.units ?? data.units;
    const { pooled, prediction } = data;
    const spread2 = (data.betweenSd ?? 0) ** 2;
    const weight = ({ standardError }: Study) => 1 / (standardError ** 2 + spread2);
    const heaviest = Math.max(...data.studies.map(weight));
    const digits = digitsFor(data.studies.map(({ effect }) => effect));
    const say = (estimate: number | undefined, { low, high }: Interval) => {
      const range = `${signed(low, digits)} to ${signed(high, digits)}`;
      if (estimate === undefined) return wide ? `(${range})` : "";
      return wide ? `${signed(estimate, digits)} (${range})` : signed(estimate, digits);
    };
    const own = data.studies.map((study, at) => ({
      ...study,
      at,
      size: Math.sqrt(weight(study) / heaviest) * (wide ? 6 : 5),
      said: say(study.effect, study),
    }));
    const last = own.length;
    const sums = [
      ...(pooled
        ? [{ name: "All together", at: last + 0.4, said: say(pooled.estimate, pooled) }]
        : []),
      ...(prediction
        ? [{ name: "One more study", at: last + 1.4, said: say(undefined, prediction) }]
        : []),
    ];
    const lines = [...own, ...sums];
    const domain = domainFor(data);
    const within = (value: number) => Math.min(Math.max(value, domain[0]), domain[1]);
    const isCut = [pooled, prediction].some(
      (interval) => interval && (interval.low < domain[0] || interval.high > domain[1]),
    );
    const left = roomForNames(
      sheet,
      lines.map(({ name }) => name),
      wide ? 0.34 : 0.38,
    );
    const says = ({ said }: { said: string }) => said;
    const right = roomForSayings(sheet, lines.map(says));
    const rowHeight = letters + 10;
    const bottom = last + sums.length - 0.1;
    const marginTop = 6;
    const marginBottom = 46;
    return compose(sheet, this.alt({ ...data, units }), [
      { text: this.title, look: "title" },
      { text: finding({ ...data, units }), look: "finding" },
      {
        plot: plot(sheet, {
          height: marginTop + marginBottom + (bottom + 0.6) * rowHeight,
          marginTop,
          marginBottom,
          marginLeft: left,
          marginRight: right,
          x: {
            label: named("effect", units ?? "unit of the studies"),
            domain,
            ticks: wide ? 7 : 4,
          },
          y: { axis: null, domain: [-0.6, bottom], reverse: true },
          r: { type: "identity" },
          marks: [
            Plot.ruleX([0], { stroke: theme.ink }),
            pooled
              ? Plot.ruleX([pooled.estimate], { stroke: theme.accent, strokeDasharray: "1,3" })
              : null,
            Plot.ruleY(own, {
              y: "at",
              x1: "low",
              x2: "high",
              stroke: theme.ink,
              strokeWidth: 1.3,
            }),
            Plot.dot(own, { x: "effect", y: "at", r: "size", symbol: "square", fill: theme.ink }),
            sums.length > 0 ? Plot.ruleY([last - 0.3], { stroke: theme.line }) : null,
            pooled
              ? Plot.line(
                  [
                    [within(pooled.low), last + 0.4],
                    [pooled.estimate, last + 0.05],
                    [within(pooled.high), last + 0.4],
                    [pooled.estimate, last + 0.75],
                  ],
                  { curve: "linear-closed", fill: theme.accent, stroke: theme.accent },
                )
              : null,
            prediction
              ? Plot.ruleY([last + 1.4], {
                  x1: within(prediction.low),
                  x2: within(prediction.high),
                  stroke: theme.accent,
                  strokeWidth: 2,
                  strokeDasharray: "5,3",
                })
              : null,
            prediction
              ? Plot.ruleX([within(prediction.low), within(prediction.high)], {
                  y1: last + 1.15,
                  y2: last + 1.65,
                  stroke: theme.accent,
                  strokeWidth: 2,
                })
              : null,
            ...rowEnds(sheet, lines, { left, right }, says),
          ],
        }),
      },
      {
        text:
          "Squares: studies, larger with more weight, lines their 95% intervals." +
          (pooled ? " Diamond: the mean effect, as wide as its interval." : "") +
          (prediction ? " Dashed: where one more study would lie." : "") +
          (isCut ? " What runs on past the frame is cut there." : ""),
        look: "note",
      },
    ]);
  },

  alt: (data) =>
    `Forest plot. ${finding(data)} ` +
    `${data.studies.map(({ name, effect }) => `${name} ${signed(effect, 2)}`).join("; ")}.`,
};

function finding({ studies, pooled, prediction, units }: Forest): string {
  const digits = digitsFor(studies.map(({ effect }) => effect));
  const range = ({ low, high }: Interval) => `${signed(low, digits)} to ${signed(high, digits)}`;
  if (pooled === undefined) return "A single study: there is nothing to pool.";
  const mean = `${studies.length} studies: ${withUnit(signed(pooled.estimate, digits), units)} (${range(pooled)})`;
  return prediction ? `${mean}; one more study would lie in ${range(prediction)}.` : `${mean}.`;
}

/**
 * The studies' own intervals set the scale. The mean's and the prediction's, which few studies leave
 * without bounds, may widen it to the double.
 */
function domainFor({ studies, pooled, prediction }: Forest): [number, number] {
  const [low, high] = domainOf([0, ...studies.flatMap((study) => [study.low, study.high])]);
  const spare = (high - low) / 2;
  const others = [pooled, prediction].flatMap((one) => (one ? [one.low, one.high] : []));
  return [
    Math.max(low - spare, Math.min(low, ...others)),
    Math.min(high + spare, Math.max(high, ...others)),
  ];
}

function readStudies(values: Cells): Forest {
  const { columns, headings } = dealColumns(values, COLUMNS);
  const { count, firstRow, numbers, labels } = readRows(
    {
      effect: { given: columns.effect, quantity: quantities.anyNumber("effect", "an effect") },
      standardError: {
        given: columns.standardError,
        quantity: quantities.spread("standard error"),
      },
    },
    { study: { given: columns.study, name: "study" } },
  );
  const studies: Study[] = [];
  for (let row = 0; row < count; row++) {
    const effect = numberAt(numbers.effect, row);
    const standardError = numberAt(numbers.standardError, row);
    if (effect === null || standardError === null) continue;
    const name = textOf(labels.study!.cells[row]?.[0]) || `row ${row + firstRow}`;
    studies.push({ name, effect, standardError, ...ownInterval(effect, standardError) });
  }
  if (studies.length === 0) {
    throw new Unreadable("no row has an effect and a standard error");
  }
  const result = computePoolStudies({
    effects: studies.map(({ effect }) => [effect]),
    standardErrors: studies.map(({ standardError }) => [standardError]),
  });
  const estimate = numberOf(result.estimate);
  const interval = intervalOf(result.low, result.high);
  return {
    studies,
    pooled: estimate !== undefined && interval ? { estimate, ...interval } : undefined,
    prediction: intervalOf(result.predictLow, result.predictHigh),
    betweenSd: numberOf(result.betweenStudySd),
    units: unitIn(headings.effect),
  };
}

/** A study's interval is that of a pool of this one study. */
export function ownInterval(effect: number, standardError: number): Interval {
  const alone = computePoolStudies({
    effects: effect,
    standardErrors: standardError,
    method: PoolMethodChoice.fixed,
  });
  return intervalOf(alone.low, alone.high) ?? { low: effect, high: effect };
}
