import * as Plot from "@observablehq/plot";
import { CellError, readRows } from "../../cells";
import * as quantities from "../../functions/quantities";
import { computeChangeScore } from "../../functions/testing/changeScore";
import { computeMdc } from "../../functions/testing/mdc";
import { dealColumns, textOf, unitIn } from "./columns";
import { compose, domainOf, plot, roomForNames, roomForSayings, rowEnds, sheetFor } from "./frame";
import { reading, Unreadable, type Cells, type Picture } from "./picture";
import { digitsFor, named, number, signed, withUnit } from "./text";

/** Each athlete's change, the largest first, against what the test can detect. */
export interface AthleteChanges {
  readonly athletes: readonly AthleteChange[];
  /** Who has no complete pair of scores. */
  readonly leftOut: readonly string[];
  readonly units: string | undefined;
}

interface AthleteChange {
  readonly name: string;
  readonly change: number;
  /** The smallest change that is more than test error, MDC. */
  readonly detectable: number;
  /** As CHANGESCORE reads it. */
  readonly reading: string;
}

const COLUMNS = {
  athlete: { name: "athlete", headed: /^(athlete|name|lifter|rower|player|who)\b/i },
  before: { name: "before", headed: /before|^pre\b/i },
  after: { name: "after", headed: /after|^post\b/i },
  error: {
    name: 'typical error (or, headed "detectable change", that)',
    headed: /typical error|detectable|\bmdc\b/i,
  },
} as const;

const DETECTABLE = /detectable|\bmdc\b/i;

/** Whose change is more than the test's error: CHANGESCORE and MDC, athlete by athlete. */
export const athleteChanges: Picture<AthleteChanges> = {
  id: "athlete-changes",
  title: "Each athlete's change",
  describe:
    "A row an athlete: name, score before, score after, typical error. One typical error is enough " +
    "for all. A last column headed detectable change (or MDC) is taken as that.",
  isOfOne: () => ["exercise"],
  read: (values) => reading(() => readChanges(values)),

  draw(data, options) {
    const sheet = sheetFor(options);
    const { theme, letters, wide } = sheet;
    const units = options.units ?? data.units;
    const rows = data.athletes.map((athlete, at) => ({ ...athlete, at }));
    const digits = digitsFor(rows.map(({ change }) => change));
    const names = rows.map(({ name }) => name);
    const left = roomForNames(sheet, names, wide ? 0.28 : 0.36);
    const says = ({ change }: AthleteChange) => signed(change, digits);
    const right = roomForSayings(sheet, rows.map(says));
    const rowHeight = rows.length > 30 ? letters + 4 : letters + 8;
    const tops = { marginTop: 28, marginBottom: 8 };
    const ends = rows.flatMap(({ change, detectable }) => [change, detectable, -detectable]);
    return compose(sheet, this.alt({ ...data, units }), [
      { text: this.title, look: "title" },
      { text: finding({ ...data, units }), look: "finding" },
      {
        plot: plot(sheet, {
          height: rows.length * rowHeight + tops.marginTop + tops.marginBottom + 8,
          ...tops,
          marginTop: 40,
          marginLeft: left,
          marginRight: right,
          x: {
            axis: "top",
            label: named("change", units),
            domain: domainOf(ends),
            ticks: wide ? 8 : 5,
            labelAnchor: "right",
          },
          y: { axis: null, domain: [-0.5, rows.length - 0.5], reverse: true },
          marks: [
            Plot.rect(rows, {
              x1: ({ detectable }: AthleteChange) => -detectable,
              x2: "detectable",
              y1: ({ at }: { at: number }) => at - 0.5,
              y2: ({ at }: { at: number }) => at + 0.5,
              fill: theme.band,
              // Without it a hairline of paper shows between the rows.
              stroke: theme.band,
            }),
            ...[-1, 1].map((side) =>
              Plot.ruleX(rows, {
                x: ({ detectable }: AthleteChange) => side * detectable,
                y1: ({ at }: { at: number }) => at - 0.5,
                y2: ({ at }: { at: number }) => at + 0.5,
                stroke: theme.quiet,
                strokeDasharray: "3,3",
              }),
            ),
            Plot.ruleX([0], { stroke: theme.ink }),
            Plot.ruleY(rows, { y: "at", x1: 0, x2: "change", stroke: theme.accent }),
            ...LOOKS.map(({ readings, symbol, filled }) =>
              Plot.dot(
                rows.filter(({ reading }) => (readings as readonly string[]).includes(reading)),
                {
                  x: "change",
                  y: "at",
                  r: 4,
                  symbol,
                  fill: filled ? theme.accent : theme.paper,
                  stroke: theme.accent,
                  strokeWidth: 1.5,
                },
              ),
            ),
            ...rowEnds(sheet, rows, { left, right }, says),
          ],
        }),
      },
      {
        text:
          "Band, dashed: changes that test error alone can make. ● real increase, ▼ real decrease, " +
          "○ within test error.",
        look: "note",
      },
      ...(data.leftOut.length > 0
        ? [{ text: leftOutText(data.leftOut), look: "note" as const }]
        : []),
    ]);
  },

  alt: (data) => {
    const digits = digitsFor(data.athletes.map(({ change }) => change));
    const real = data.athletes.filter(({ reading }) => reading !== "within test error");
    const named = real.map(({ name, change }) => `${name} ${signed(change, digits)}`).join(", ");
    return (
      `Each athlete's change against the detectable change. ${finding(data)}` +
      (real.length > 0 ? ` They are ${named}.` : "")
    );
  },
};

/** A triangle on its tip, for a fall. */
const pointingDown = {
  draw(context: Pick<CanvasPath, "moveTo" | "lineTo" | "closePath">, size: number) {
    const half = Math.sqrt(size) * 0.7;
    context.moveTo(-half, -half * 0.8);
    context.lineTo(half, -half * 0.8);
    context.lineTo(0, half);
    context.closePath();
  },
};

/** How each reading of a change is marked: by shape and filling, not by colour. */
const LOOKS = [
  { readings: ["within test error"], symbol: "circle", filled: false },
  { readings: ["real increase"], symbol: "circle", filled: true },
  { readings: ["real decrease"], symbol: pointingDown, filled: true },
] as const satisfies readonly {
  readings: readonly string[];
  symbol: Plot.SymbolType;
  filled: boolean;
}[];

function finding({ athletes, units }: AthleteChanges): string {
  const count = (reading: string) => athletes.filter((one) => one.reading === reading).length;
  const sizes = athletes.map(({ detectable }) => detectable);
  const digits = digitsFor(sizes);
  const [least, most] = [number(Math.min(...sizes), digits), number(Math.max(...sizes), digits)];
  const band = least === most ? least : `${least} to ${most}`;
  return (
    `${count("real increase")} of ${athletes.length} rose by more than the detectable change of ` +
    `${withUnit(band, units)}, ${count("real decrease")} fell by more.`
  );
}

function leftOutText(names: readonly string[]): string {
  const some = names.slice(0, 4).join(", ");
  const more = names.length > 4 ? ` and ${names.length - 4} more` : "";
  return `Without both scores, not drawn: ${some}${more}.`;
}

function readChanges(values: Cells): AthleteChanges {
  const { columns, headings } = dealColumns(values, COLUMNS);
  const given = DETECTABLE.test(headings.error ?? "") ? "detectable change" : "typical error";
  const { count, firstRow, numbers, labels } = readRows(
    {
      before: { given: columns.before, quantity: quantities.score("before") },
      after: { given: columns.after, quantity: quantities.score("after") },
      error: { given: columns.error, quantity: quantities.above0(given) },
    },
    { athlete: { given: columns.athlete, name: "athlete" } },
  );
  const errors = typicalErrors(numbers.error!, given);
  const athletes: AthleteChange[] = [];
  const leftOut: string[] = [];
  const changes = computeChangeScore({
    before: upright(numbers.before!),
    after: upright(numbers.after!),
    typicalError: upright(errors),
  });
  const detectable = computeMdc({ typicalError: upright(errors) });
  for (let row = 0; row < count; row++) {
    const written = textOf(labels.athlete!.cells[row]?.[0]);
    const name = written || `row ${row + firstRow}`;
    const score = resultIn(changes[row] ?? []);
    const least = resultIn(detectable[row] ?? []);
    if (score === null || least === null) {
      if (written !== "") leftOut.push(name);
      continue;
    }
    athletes.push({ name, change: score.change, detectable: least, reading: score.reading });
  }
  if (athletes.length === 0) {
    throw new Unreadable("no row has a score before, a score after and a typical error");
  }
  athletes.sort((a, b) => b.change - a.change);
  return { athletes, leftOut, units: unitIn(headings.before) ?? unitIn(headings.after) };
}

/** A typical error for each row: the row's own, or the only one that there is. */
function typicalErrors(column: readonly (number | null)[], given: string): (number | null)[] {
  const all = column.filter((value) => value !== null);
  if (all.length === 0) {
    throw new Unreadable(`no row has a ${given}; expected at least one, beside the scores`);
  }
  const [first = null, ...more] = all;
  const perRow = more.length === 0 ? column.map(() => first) : [...column];
  if (given === "typical error") return perRow;
  // A detectable change is so many typical errors: as many as the one of an error of 1.
  const one = resultIn(computeMdc({ typicalError: 1 }).flat());
  return perRow.map((value) => (value === null || one === null ? null : value / one));
}

/** Numbers as the cells of a column. */
const upright = (numbers: readonly (number | null)[]) => numbers.map((one) => [one]);

/** What a lifted function gives in a row of one column; `null` where the row is not filled in. */
function resultIn<R>([result]: readonly (R | CellError | null)[]): R | null {
  if (result instanceof CellError) throw result;
  return result ?? null;
}
