import { implementations } from "../../../src/functions/implementations";
import { cellAt } from "../../present";
import { log, logColumn, reserveCalls, setsOf, squats } from "./demo";

/** What somebody might select for each picture. */
export interface Selected {
  readonly id: string;
  readonly values: unknown[][];
  readonly units?: string;
}

const asText = (column: unknown[][]) => column.map(([cell]) => [String(cell ?? "")]);

/** LOGSUMMARY of the squad's log, by any keys. */
export const summaryBy = (keys: unknown[][]) =>
  implementations.LOGSUMMARY(
    keys,
    logColumn(4),
    logColumn(5),
    asText(logColumn(6)),
    logColumn(7),
  ) as unknown[][];

const blockOf = (week: number) => `Block ${week <= 5 ? "A" : week <= 9 ? "B" : "C"}`;

/** Block and week of every row of the log. */
export const blocksAndWeeks = log.map((row, at) =>
  at === 0 ? ["block", "week"] : [blockOf(Number(row[1])), row[1]],
);

/** What the two squat tests that the squad began with say of the test. */
const reliability = (part: string) =>
  cellAt(
    implementations.RELIABILITY(
      squats.map(({ firstTest, before }) => [firstTest, before]),
      null,
      part,
    ),
    0,
    0,
  ) as number;

export const typicalError = reliability("typical error");

/** The squat before and after of everybody, with one number about the test beside the first. */
export const squatChanges = (heading: string, ofTheTest: number) => [
  ["lifter", "squat before, kg", "squat after, kg", heading],
  ...squats.map(({ rower, before, after }, at) => [
    rower,
    before,
    after,
    at === 0 ? ofTheTest : null,
  ]),
];

/** Five invented studies: name, close sets a week, effect size, standard error. */
export const studies = [
  ["Study 1", 12, 0.39, 0.2],
  ["Study 2", 10, 0.46, 0.17],
  ["Study 3", 8, 0.17, 0.25],
  ["Study 4", 6, 0.13, 0.18],
  ["Study 5", 4, -0.12, 0.15],
];

/** SQUADTREND of three lifters' logs, lifter and lift each. */
export const squadTrend = (() => {
  const rows = log.filter(([, , lifter], at) => at === 0 || String(lifter) < "E");
  const column = (at: number) => rows.map((row) => [row[at]]);
  return implementations.SQUADTREND(
    rows.map((row) => [row[2], row[3]]),
    column(0),
    column(4),
    column(5),
    asText(column(6)),
  ) as unknown[][];
})();

/** RISECOMPARE of one lifter's squats, before and from the sixth week on. */
const blocks = (() => {
  const [, ...rows] = setsOf("Callum Reid", "Back squat");
  const column = (at: number) => rows.map((row) => [row[at]]);
  return implementations.RISECOMPARE(
    [[45_936]],
    column(0),
    column(1),
    column(2),
    asText(column(3)),
  ) as unknown[][];
})();

/** A selection of the invented squad for every picture. */
export const demoSelections: readonly Selected[] = [
  { id: "strength-trend", values: setsOf("Callum Reid", "Back squat") },
  { id: "squad-rises", values: squadTrend },
  { id: "blocks-compared", values: blocks },
  { id: "weekly-load", values: summaryBy(blocksAndWeeks), units: "kg" },
  { id: "reserve-agreement", values: reserveCalls },
  {
    id: "athlete-changes",
    // The one that the sheets say, which allows for how few lifters the test's error is known from.
    values: squatChanges("detectable change, kg", reliability("detectable change")),
  },
  {
    id: "group-changes",
    values: [
      ["crew", "squat before, kg", "squat after, kg"],
      ...squats.map(({ crew, before, after }) => [crew, before, after]),
    ],
  },
  {
    id: "forest",
    values: [["study", "effect size", "SE"], ...studies.map(([name, , g, se]) => [name, g, se])],
  },
  {
    id: "dose-response",
    values: [["close sets a week", "effect size", "SE"], ...studies.map((row) => row.slice(1))],
  },
];

/** Numbers that look measured and are always the same. */
const scatter = (at: number) => {
  const turned = Math.sin(at * 12.9898) * 43758.5453;
  return turned - Math.floor(turned);
};

const many = <T>(count: number, make: (at: number) => T) =>
  Array.from({ length: count }, (_, at) => make(at));

/** Selections that are larger, smaller or clumsier than usual. */
export const awkwardSelections: readonly (Selected & { readonly what: string })[] = [
  {
    what: "a single day",
    id: "strength-trend",
    values: [
      ["date", "one-rep max", "low", "high"],
      [46000, 140, 135, 146],
      ["", "", "", ""],
    ],
  },
  {
    what: "a year of weeks",
    id: "weekly-load",
    values: [
      ["week", "sets", "volume load", "close sets"],
      ...many(52, (at) => [at + 1, 50, 12000 + 8000 * scatter(at), Math.round(20 * scatter(at))]),
    ],
  },
  { what: "lifters by name", id: "weekly-load", values: summaryBy(logColumn(2)), units: "kg" },
  {
    what: "two calls",
    id: "reserve-agreement",
    values: [
      [4, 3, 9],
      [5, 2, 8],
    ],
  },
  {
    what: "sixty athletes",
    id: "athlete-changes",
    values: [
      ["athlete", "before", "after", "MDC"],
      ...many(60, (at) => [
        `Athlete with a rather long name ${at + 1}`,
        100 + at,
        at === 7 ? "DNS" : 100 + at + 20 * (scatter(at) - 0.4),
        6 + (at % 2),
      ]),
    ],
  },
  {
    what: "two athletes",
    id: "athlete-changes",
    values: [
      ["Ines Duarte", 100, 104, 2],
      ["Bram Verhoeven", 100, 90, 2],
    ],
  },
  {
    what: "two athletes in two groups",
    id: "group-changes",
    values: [
      ["Heron", 100, 104],
      ["Otter", 100, 97],
    ],
  },
  {
    what: "sixty athletes in groups with long names",
    id: "group-changes",
    values: many(60, (at) => [
      at % 2 ? "Morning training with the coach" : "Evening",
      100 + at,
      100 + at + Math.round(10 * (scatter(at) - 0.4)),
    ]),
  },
  { what: "one study", id: "forest", values: [["Only study", 0.3, 0.1]] },
  {
    what: "two studies",
    id: "forest",
    values: [
      ["Study 1", 0.3, 0.1],
      ["Study 2", 0.1, 0.2],
    ],
  },
  {
    what: "twenty studies with long names",
    id: "forest",
    values: many(20, (at) => [
      `Firstauthor, Secondauthor, Thirdauthor and others ${2000 + at}`,
      scatter(at) - 0.2,
      0.1 + scatter(at + 50) * 0.3,
    ]),
  },
  {
    what: "three studies",
    id: "dose-response",
    values: [
      [1, 0.3, 0.1],
      [2, 0.1, 0.2],
      [3, 0.5, 0.2],
    ],
  },
];
