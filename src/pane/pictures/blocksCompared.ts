import * as Plot from "@observablehq/plot";
import { readCell } from "../../cells";
import { compose, domainOf, plot, sheetFor } from "./frame";
import type { Interval } from "./interval";
import { reading, Unreadable, type Cells, type Picture } from "./picture";
import { textOf, withoutBlankEdges } from "./columns";
import { number, signed } from "./text";

/** One lifter's weekly rise before and after a change, and the difference, as RISECOMPARE has them. */
export interface BlocksCompared {
  /** Before, after, and the difference between them, in percent a week. */
  readonly rows: readonly (Interval & { readonly name: string; readonly mean: number })[];
  readonly chance: number;
}

/** The report's labels: what stands in a row, and its interval. */
const ROWS = [
  { name: "first block", mean: "before", low: "before low", high: "before high" },
  { name: "second block", mean: "after", low: "after low", high: "after high" },
  { name: "difference", mean: "difference", low: "low", high: "high" },
] as const;

/** Which of two blocks one lifter rose faster in: the interval of the difference decides. */
export const blocksCompared: Picture<BlocksCompared> = {
  id: "blocks-compared",
  title: "Two blocks compared",
  describe: "The report of RISECOMPARE: its labels and the values beside them.",
  read: (values) => reading(() => readBlocks(values)),

  draw(data, options) {
    const sheet = sheetFor(options);
    const { theme, letters } = sheet;
    const domain = domainOf([0, ...data.rows.flatMap(({ low, high }) => [low, high])]);
    return compose(sheet, this.alt(data), [
      { text: this.title, look: "title" },
      { text: finding(data), look: "finding" },
      ...data.rows.flatMap((row, at) => [
        { text: `${row.name}: ${say(row)} a week`, look: "label" as const },
        {
          plot: plot(sheet, {
            height: at === data.rows.length - 1 ? letters + 52 : 26,
            marginTop: 6,
            marginBottom: at === data.rows.length - 1 ? letters + 32 : 6,
            marginLeft: 8,
            marginRight: 8,
            x: {
              domain,
              ticks: sheet.wide ? 8 : 5,
              axis: at === data.rows.length - 1 ? "bottom" : null,
              label: "rise a week, %",
            },
            y: { axis: null },
            marks: [
              Plot.ruleX([0], { stroke: theme.quiet, strokeDasharray: "3,3" }),
              Plot.ruleY([row], {
                y: () => 0,
                x1: "low",
                x2: "high",
                stroke: theme.accent,
                strokeWidth: 2,
              }),
              Plot.dot([row], { x: "mean", y: () => 0, r: 5, fill: theme.accent }),
            ],
          }),
        },
      ]),
      { text: "Dot: the rise. Line: its interval. Dashed: none.", look: "note" },
    ]);
  },

  alt: (data) =>
    `Two blocks of one lifter. ${finding(data)} ${data.rows
      .map((row) => `${row.name} ${say(row)} a week`)
      .join(", ")}.`,
};

const say = ({ mean, low, high }: BlocksCompared["rows"][number]) =>
  `${signed(mean, 2)}% (${signed(low, 2)} to ${signed(high, 2)})`;

function finding({ chance }: BlocksCompared): string {
  const percent = `${number(chance * 100, 0)}%`;
  if (chance >= 0.95) return `The lifter rose faster in the second block (chance ${percent}).`;
  if (chance <= 0.05) return "The lifter rose faster in the first block.";
  return `The log cannot tell in which block the lifter rose faster (chance of the second ${percent}).`;
}

function readBlocks(values: Cells): BlocksCompared {
  const cells = withoutBlankEdges(values);
  const valueOf = (label: string): number => {
    const row = cells.find(([name]) => textOf(name).toLowerCase() === label);
    const value = readCell(row?.[1]);
    if (typeof value === "number") return value;
    throw new Unreadable(`no number stands beside “${label}”; expected the report of RISECOMPARE`);
  };
  const percent = (label: string) => valueOf(label) * 100;
  const chance = valueOf("chance of a faster rise");
  return {
    rows: ROWS.map(({ name, mean, low, high }) => ({
      name,
      mean: percent(mean),
      low: percent(low),
      high: percent(high),
    })),
    chance,
  };
}
