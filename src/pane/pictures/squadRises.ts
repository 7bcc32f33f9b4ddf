import * as Plot from "@observablehq/plot";
import { numberAt, readRows } from "../../cells";
import * as quantities from "../../functions/quantities";
import { dealColumns, headingsOf, textOf, withoutBlankEdges } from "./columns";
import { compose, domainOf, plot, roomForNames, roomForSayings, rowEnds, sheetFor } from "./frame";
import { reading, Unreadable, type Cells, type Picture } from "./picture";
import { number, signed } from "./text";

/** Every lifter's rise, or every lifter's and lift's, the largest first. */
export interface SquadRises {
  readonly rises: readonly Rise[];
  /** Whose log is too short for a trend. */
  readonly leftOut: number;
}

interface Rise {
  readonly name: string;
  /** Since the first day, in percent. */
  readonly rise: number;
  readonly chance: number;
}

const COLUMNS = {
  rise: { name: "rise", headed: /^rise$/i },
  chance: { name: "chance of rise", headed: /^chance of rise$/i },
} as const;

/** From this chance on a rise is taken for one, and below what is left for a fall. */
const SURE = 0.95;

/** Who got stronger, in one picture: the rises of SQUADTREND, filled where the log is sure. */
export const squadRises: Picture<SquadRises> = {
  id: "squad-rises",
  title: "The squad's rises",
  describe: "The table of SQUADTREND with its headings: the keys, …, rise, chance of rise.",
  read: (values) => reading(() => readRises(values)),

  draw(data, options) {
    const sheet = sheetFor(options);
    const { theme, letters, wide } = sheet;
    const rows = data.rises.map((one, at) => ({ ...one, at }));
    const left = roomForNames(
      sheet,
      rows.map(({ name }) => name),
      wide ? 0.32 : 0.42,
    );
    const says = ({ rise }: Rise) => `${signed(rise, 1)}%`;
    const right = roomForSayings(sheet, rows.map(says));
    const rowHeight = rows.length > 30 ? letters + 4 : letters + 8;
    return compose(sheet, this.alt(data), [
      { text: this.title, look: "title" },
      { text: finding(data), look: "finding" },
      {
        plot: plot(sheet, {
          height: rows.length * rowHeight + 56,
          marginTop: 40,
          marginBottom: 8,
          marginLeft: left,
          marginRight: right,
          x: {
            axis: "top",
            label: "rise since the first day, %",
            domain: domainOf([0, ...rows.map(({ rise }) => rise)]),
            ticks: wide ? 8 : 4,
            labelAnchor: "right",
          },
          y: { axis: null, domain: [-0.5, rows.length - 0.5], reverse: true },
          marks: [
            Plot.ruleX([0], { stroke: theme.ink }),
            Plot.ruleY(rows, { y: "at", x1: 0, x2: "rise", stroke: theme.accent }),
            Plot.dot(rows, {
              x: "rise",
              y: "at",
              r: 4,
              fill: (one: Rise) => (isSure(one) ? theme.accent : theme.paper),
              stroke: theme.accent,
              strokeWidth: 1.5,
            }),
            ...rowEnds(sheet, rows, { left, right }, says),
          ],
        }),
      },
      {
        text:
          "● the chance that this is a rise, or a fall, is 95% or more; ○ the log cannot tell." +
          (data.leftOut > 0 ? ` Logs too short for a trend, not drawn: ${data.leftOut}.` : ""),
        look: "note",
      },
    ]);
  },

  alt: (data) => {
    const sure = data.rises.filter(isSure);
    const named = sure.map((one) => `${one.name} ${signed(one.rise, 1)}%`).join(", ");
    return `Each rise since the first day. ${finding(data)}${named === "" ? "" : ` They are ${named}.`}`;
  },
};

const isSure = ({ chance }: Rise) => chance >= SURE || chance <= 1 - SURE;

function finding({ rises }: SquadRises): string {
  const up = rises.filter(({ chance }) => chance >= SURE).length;
  const down = rises.filter(({ chance }) => chance <= 1 - SURE).length;
  return (
    `${number(up, 0)} of ${rises.length} rose for sure, ${down} fell; for ` +
    `${rises.length - up - down} the log cannot tell.`
  );
}

function readRises(values: Cells): SquadRises {
  const cells = withoutBlankEdges(values);
  const headings = headingsOf(cells) ?? [];
  const { columns } = dealColumns(cells, COLUMNS);
  const keys = headings.findIndex((heading) => /^days$/i.test(heading));
  if (keys < 1) {
    throw new Unreadable("no column of names stands before one headed days; expected SQUADTREND");
  }
  const { count, firstRow, numbers } = readRows({
    rise: { given: columns.rise, quantity: quantities.anyNumber("rise") },
    chance: { given: columns.chance, quantity: quantities.anyNumber("chance of rise") },
  });
  const rises: Rise[] = [];
  let leftOut = 0;
  for (let row = 0; row < count; row++) {
    const name = (cells[row + firstRow - 1] ?? []).slice(0, keys).map(textOf).join(", ");
    const rise = numberAt(numbers.rise, row);
    const chance = numberAt(numbers.chance, row);
    if (rise !== null && chance !== null) rises.push({ name, rise: rise * 100, chance });
    else if (name.replaceAll(", ", "") !== "") leftOut++;
  }
  if (rises.length === 0) throw new Unreadable("no row has a rise and the chance of one");
  rises.sort((a, b) => b.rise - a.rise);
  return { rises, leftOut };
}
