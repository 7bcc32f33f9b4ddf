import * as Plot from "@observablehq/plot";
import { numberAt, readRows } from "../../cells";
import * as quantities from "../../functions/quantities";
import { computeDoseResponse } from "../../functions/studies/doseResponse";
import { dealColumns, unitIn } from "./columns";
import { ownInterval } from "./forest";
import { compose, domainOf, plot, sheetFor } from "./frame";
import { intervalOf, type Interval } from "./interval";
import { reading, Unreadable, type Cells, type Picture } from "./picture";
import { digitsFor, named, number, signed } from "./text";

/** Studies at their doses, and the line that DOSERESPONSE puts through them. */
export interface DoseResponse {
  readonly studies: readonly DosedStudy[];
  readonly line: readonly LinePoint[];
  readonly slope: number;
  readonly slopeInterval: Interval | undefined;
  /** What the dose is, as its heading says. */
  readonly dose: string | undefined;
  readonly units: string | undefined;
}

interface DosedStudy extends Interval {
  readonly dose: number;
  readonly effect: number;
  readonly standardError: number;
}

interface LinePoint extends Interval {
  readonly dose: number;
  readonly estimate: number;
}

const COLUMNS = {
  dose: { name: "dose", headed: /^(dose|amount|sets|reps|weeks)\b|reserve|\bleaves?\b/i },
  effect: { name: "effect", headed: /^(?!.*(error|\bse\b)).*(effect|estimate)/i },
  standardError: { name: "standard error", headed: /standard error|^se\b/i },
} as const;

/** How many points draw the line and its curved band. */
const POINTS = 41;

/** How the effect goes with the dose, over the doses that were studied and no further. */
export const doseResponse: Picture<DoseResponse> = {
  id: "dose-response",
  title: "Dose and response",
  describe: "A row a study, at least three: dose, effect, standard error.",
  read: (values) => reading(() => readDoses(values)),

  draw(data, options) {
    const sheet = sheetFor(options);
    const { theme, wide } = sheet;
    const units = options.units ?? data.units;
    const heaviest = Math.max(...data.studies.map(({ standardError }) => 1 / standardError));
    const size = ({ standardError }: DosedStudy) => (wide ? 8 : 6.5) / standardError / heaviest;
    const domain = domainFor(data);
    const isCut = data.line.some(({ low, high }) => low < domain[0] || high > domain[1]);
    const edge = { x: "dose", stroke: theme.quiet, strokeDasharray: "3,3", clip: true } as const;
    return compose(sheet, this.alt(data), [
      { text: this.title, look: "title" },
      { text: finding(data), look: "finding" },
      {
        plot: plot(sheet, {
          height: wide ? 360 : 240,
          marginTop: 28,
          marginLeft: 42,
          marginRight: 14,
          marginBottom: 46,
          x: {
            label: data.dose ?? named("dose", undefined),
            domain: domainOf(data.studies.map(({ dose }) => dose)),
            ticks: wide ? 8 : 5,
          },
          y: {
            label: named("effect", units ?? "unit of the studies"),
            domain,
            ticks: 6,
            grid: true,
          },
          r: { type: "identity" },
          marks: [
            Plot.areaY(data.line, {
              x: "dose",
              y1: "low",
              y2: "high",
              fill: theme.band,
              clip: true,
            }),
            Plot.ruleY([0], { stroke: theme.ink }),
            Plot.lineY(data.line, { ...edge, y: "low" }),
            Plot.lineY(data.line, { ...edge, y: "high" }),
            Plot.lineY(data.line, {
              x: "dose",
              y: "estimate",
              stroke: theme.accent,
              strokeWidth: 2,
            }),
            Plot.ruleX(data.studies, { x: "dose", y1: "low", y2: "high", stroke: theme.quiet }),
            Plot.dot(data.studies, {
              x: "dose",
              y: "effect",
              r: size,
              fill: theme.paper,
              stroke: theme.ink,
              strokeWidth: 1.5,
            }),
          ],
        }),
      },
      {
        text:
          "Circles: studies, larger where more certain, lines their 95% intervals. Band, dashed: the " +
          `interval of the mean effect at that dose.${isCut ? " It runs on past the frame." : ""}`,
        look: "note",
      },
    ]);
  },

  alt: (data) =>
    `Dose and response, a line through ${data.studies.length} studies. ${finding(data)}`,
};

function finding({ studies, slope, slopeInterval, line }: DoseResponse): string {
  const digits = digitsFor(studies.map(({ effect }) => effect));
  const range = slopeInterval
    ? ` (${signed(slopeInterval.low, digits)} to ${signed(slopeInterval.high, digits)})`
    : "";
  const doses = line.map(({ dose }) => dose);
  const [from, to] = [Math.min(...doses), Math.max(...doses)];
  const dose = (value: number) => number(value, Number.isInteger(value) ? 0 : 1);
  return (
    `One more of the dose goes with ${signed(slope, digits)}${range} in the effect; ` +
    `${studies.length} studies, doses ${dose(from)} to ${dose(to)}.`
  );
}

/** The studies' own intervals set the scale; the band may widen it by half. */
function domainFor({ studies, line }: DoseResponse): [number, number] {
  const [low, high] = domainOf([0, ...studies.flatMap((study) => [study.low, study.high])]);
  const spare = (high - low) / 4;
  return [
    Math.max(low - spare, Math.min(low, ...line.map((point) => point.low))),
    Math.min(high + spare, Math.max(high, ...line.map((point) => point.high))),
  ];
}

function readDoses(values: Cells): DoseResponse {
  const { columns, headings } = dealColumns(values, COLUMNS);
  const { count, numbers } = readRows({
    dose: { given: columns.dose, quantity: quantities.anyNumber("dose", "a dose") },
    effect: { given: columns.effect, quantity: quantities.anyNumber("effect", "an effect") },
    standardError: { given: columns.standardError, quantity: quantities.spread("standard error") },
  });
  const studies: DosedStudy[] = [];
  for (let row = 0; row < count; row++) {
    const dose = numberAt(numbers.dose, row);
    const effect = numberAt(numbers.effect, row);
    const standardError = numberAt(numbers.standardError, row);
    if (dose === null || effect === null || standardError === null) continue;
    studies.push({ dose, effect, standardError, ...ownInterval(effect, standardError) });
  }
  if (studies.length === 0) {
    throw new Unreadable("no row has a dose, an effect and a standard error");
  }
  const doses = studies.map(({ dose }) => dose);
  const [least, most] = [Math.min(...doses), Math.max(...doses)];
  const at = Array.from({ length: POINTS }, (_, step) => [
    least + ((most - least) * step) / (POINTS - 1),
  ]);
  const { line, atDoses } = computeDoseResponse({
    doses: doses.map((dose) => [dose]),
    effects: studies.map(({ effect }) => [effect]),
    standardErrors: studies.map(({ standardError }) => [standardError]),
    at,
  });
  return {
    studies,
    line: atDoses,
    slope: line.slope,
    slopeInterval: intervalOf(line.low, line.high),
    dose: headings.dose,
    units: unitIn(headings.effect),
  };
}
