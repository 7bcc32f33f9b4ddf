import { cellAt, elementAt } from "../../present";
import { between, pick, type Random } from "./draw";
import type { Scalar } from "./spreadsheet/values";

/** Random arguments for calls of the functions that a copy can do without the add-in. */

type Draw = (random: Random) => Scalar;

/** An argument: its cells, and how a formula hands them over. */
export interface Drawn {
  readonly rows: readonly (readonly Scalar[])[];
  readonly how: "reference" | "as text" | "omitted";
}

interface Draws {
  readonly arguments: (random: Random) => Drawn[];
  /** How exactly the numbers agree, where it is not to 1e-11. */
  readonly digits?: number;
}

/** What a cell of a sheet can hold that is no number as it should be. */
const odd = pick(
  ...[null, null, 0, "", " ", "DNS", "–", "80kg", "2,5", "7.5", " 3 ", "1,250", "-1,250", "1e1"],
  ...[-4, true, false, 45_000, "#N/A", "#DIV/0!", "#REF!", "#NAME?", "#VALUE!", "1'000", "½", "−2"],
  ...["5%", 1e101, 1e-101, "10RM", "\u00a03", "3/4"],
);

/** What stands above a column. */
const heading = pick("load", "trial 1", "10RM", "week 2", "reps (each)", "set 3 of 4", "Δ");

const mostly =
  (usual: Draw, often = 0.93): Draw =>
  (random) =>
    random() < often ? usual(random) : odd(random);

const load = mostly(between(20, 260, 0.25));
const reps = mostly(between(1, 18, 1));
const reserve = mostly(between(0, 6));
const increment = mostly(pick(0, 1, 1.25, 2.5, 5));
const equation: Draw = (random) =>
  random() < 0.93
    ? pick(
        "epley",
        "brzycki",
        "lander",
        "lombardi",
        "mayhew",
        "oconner",
        " Wathan ",
        25,
        "40",
        null,
      )(random)
    : pick("eply", -3, 0, true, "", "#N/A", "2,5", "1,250", "#REF!")(random);
const equationOrAll: Draw = (random) =>
  random() < 0.4 ? pick("all", "ALL ", "all")(random) : equation(random);
const score = mostly(between(-20, 80, 0.1));
const spread = mostly(between(0.5, 12, 0.1));
const size = mostly(between(1, 30, 1));
const confidence = mostly(pick(0.95, 0.9, 0.5, 0.99, null, 0), 0.95);
const df = mostly(pick(null, 0, 1, 2, 4.7, 9, 24, 180.5));

interface Parameter {
  readonly draw: Draw;
  /** How often it is left out. */
  readonly omitted?: number;
  /** Words, which no heading stands above. */
  readonly word?: boolean;
  /** Whether it is always one cell, or mostly. */
  readonly single?: boolean;
}

const data = (draw: Draw): Parameter => ({ draw });
const optional = (draw: Draw): Parameter => ({ draw, omitted: 0.3 });
const word = (draw: Draw): Parameter => ({ draw, omitted: 0.3, word: true, single: true });
/** A label of a report, a blank or a word that is none. */
const part = (...labels: readonly [string, ...string[]]): Parameter => ({
  draw: (random) =>
    random() < 0.92
      ? pick(...labels, labels[0].toUpperCase())(random)
      : pick("", null, 0, "x", "#N/A", true)(random),
  omitted: 0.3,
  word: true,
});

const cells = (rows: number, columns: number, of: (row: number, column: number) => Scalar) =>
  Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => of(row, column)),
  );

/** Mostly single cells, else columns of one length, now and then rows, grids and what does not fit. */
function lifted(...parameters: readonly Parameter[]) {
  return (random: Random): Drawn[] => {
    const isSingle = random() < 0.5;
    const length = 2 + Math.floor(random() * 3);
    const headed = random() < 0.15;
    return parameters.map(({ draw, omitted = 0, word = false, single = false }) => {
      if (random() < omitted) return { rows: [[null]], how: "omitted" };
      const stays = isSingle || random() < (single ? 0.9 : 0.3);
      const odds = random();
      const [rows, columns] = stays
        ? [1, 1]
        : odds < 0.9
          ? [length, 1]
          : odds < 0.94
            ? [1, 3]
            : odds < 0.97
              ? [length, 3]
              : [length + 1, 1];
      const drawn = cells(rows, columns, (row) =>
        headed && row === 0 && rows > 1 && !word && random() < 0.95
          ? heading(random)
          : draw(random),
      );
      return { rows: drawn, how: random() < 0.1 ? "as text" : "reference" };
    });
  };
}

/** Columns read row by row, of one length but now and then. */
function columns(...parameters: readonly (Parameter & { readonly keys?: boolean })[]) {
  return (random: Random): Drawn[] => {
    const length = random() < 0.15 ? 1 : 2 + Math.floor(random() * 6);
    const headed = length > 1 && random() < 0.4;
    const lying = length > 1 && random() < 0.06;
    const clean = random() < 0.6;
    return parameters.map(({ draw, omitted = 0, word = false, single = false, keys = false }) => {
      if (random() < omitted) return { rows: [[null]], how: "omitted" };
      const odds = random();
      const rows = single || odds < 0.04 ? 1 : odds < 0.06 ? length + 1 : length;
      const content = (row: number): Scalar => {
        if (headed && row === 0 && rows > 1 && !word) return heading(random);
        let drawn = draw(random);
        // Mostly whole columns: a single bad cell is the error of all of them.
        while (clean && !word && !single && isBad(drawn)) drawn = draw(random);
        return drawn;
      };
      const wide = keys && random() < 0.25 ? 2 : 1;
      const upright = cells(rows, wide, content);
      const turned = lying && wide === 1 ? [upright.flat()] : upright;
      return { rows: turned, how: random() < 0.1 ? "as text" : "reference" };
    });
  };
}

const isBad = (cell: Scalar) =>
  typeof cell === "boolean" ||
  (typeof cell === "string" && /\d|#/.test(cell) && !/^\s*\d+([.,]\d)?\s*$/.test(cell)) ||
  (typeof cell === "number" && (cell < 0 || cell >= 40_000 || (cell !== 0 && cell < 1e-99)));

const keys: Parameter & { keys: boolean } = {
  draw: pick("Squat", "squat ", "Bench", "", null, 5, "5", true, "Row", "Row", "Row", "Squat"),
  omitted: 0.4,
  keys: true,
};
const only = (draw: Draw, omitted = 0.4): Parameter => ({ draw, omitted, single: true });

/** A table of warm-up steps, with and without a heading. */
function steps(random: Random): Drawn {
  if (random() < 0.5) return { rows: [[null]], how: "omitted" };
  const odds = random();
  if (odds < 0.08) return { rows: [[pick(null, 0, 0.5, "")(random)]], how: "reference" };
  const height = 1 + Math.floor(random() * 4);
  const width = odds < 0.12 ? 3 : 2;
  const rows = cells(height, width, (_, column) =>
    column === 0
      ? mostly(pick(0.3, 0.5, 0.7, 0.85, 1, 1.1), 0.97)(random)
      : mostly(between(1, 9, 1), 0.97)(random),
  );
  const headed = random() < 0.3 ? [["share", "reps", "x"].slice(0, width)] : [];
  const blank = random() < 0.15 ? [Array<Scalar>(width).fill(null)] : [];
  return { rows: [...headed, ...rows, ...blank], how: "reference" };
}

const exercises: Parameter & { keys: boolean } = {
  draw: (random) =>
    random() < 0.995
      ? pick("Squat", "squat ", "Bench", "Row", "ROW", 5, "5")(random)
      : pick("Swim", null, 0, "#N/A", true)(random),
  keys: true,
};

/** A table of how much exercises count for muscles, mostly as it should be. */
function shares(random: Random): Drawn {
  const slip = random() < 0.3 ? 0.98 : 1;
  const share = mostly(pick(1, 0.5, 0, null, "0,5", "0.25", "–", ""), slip);
  const muscle = mostly(pick("quads", "back", "chest", "Arme"), slip);
  const width = 1 + Math.floor(random() * 3);
  const titles = [
    pick("exercise", null, 0, "lift")(random),
    ...cells(1, width, () => muscle(random))[0]!,
  ];
  const names = ["Squat", "bench ", "Row", 5, ...(random() < 0.1 ? ["TRUE"] : [])];
  const rows = names.map((name): Scalar[] => [name, ...cells(1, width, () => share(random))[0]!]);
  if (random() < 0.2)
    rows.splice(2, 0, [pick(null, 0, "")(random), ...Array<Scalar>(width).fill(null)]);
  if (random() < 0.05) rows.push(["squat", ...Array<Scalar>(width).fill(1)]);
  if (random() < 0.03) rows.push([null, ...Array<Scalar>(width).fill(0.5)]);
  const table = [titles, ...rows];
  const wider = random() < 0.2 ? table.map((row) => [...row, null]) : table;
  return { rows: random() < 0.03 ? [titles] : wider, how: "reference" };
}

/** Sets of a lifter who has a curve, mostly, each a little off it. */
function ownSets(random: Random): Drawn[] {
  const [loads, done, ...rest] = columns(
    ...[data(load), data(reps), { draw: reserve, omitted: 0.6 }, only(confidence)],
    only(
      part(
        ...(["sets", "one-rep max", "one-rep max low", "one-rep max high", "constant"] as const),
        ...["constant low", "constant high", "reps at 80%", "residual sd", "r squared"],
      ).draw,
    ),
  )(random);
  const noise = pick(0.05, 0.2, 1)(random) as number;
  const onCurve = (cell: Scalar, row: number): Scalar => {
    const t = done!.rows[row]?.[0];
    if (typeof cell !== "number" || typeof t !== "number" || random() < 0.1) return cell;
    return Math.round(280 / (1 + (t - 1 + noise * (random() - 0.5)) / 25)) / 2;
  };
  const hasCurve = random() < 0.8;
  const rows = hasCurve
    ? loads!.rows.map((cells, row) => cells.map((cell) => onCurve(cell, row)))
    : loads!.rows;
  return [{ ...loads!, rows }, done!, ...rest];
}

/** A table of blocks, with and without names and a heading. */
function blocks(random: Random): Drawn {
  const odds = random();
  if (odds < 0.06) return { rows: [[pick(null, 0, 0.5, "")(random)]], how: "reference" };
  const named = random() < 0.5;
  const calm = random() < 0.7 ? 1 : 0.98;
  const columns = [
    ...[between(1, 4, 1), between(2, 6, 1), between(2, 6, 1), between(3, 6, 1), between(6, 9, 1)],
    ...[between(1, 4), between(0, 3)],
    ...(odds < 0.1 ? [between(0, 3)] : []),
  ].map((draw) => mostly(draw, calm));
  const name = mostly(pick("Base", "Build", "easy week", 3, null, "", 0, true), 0.97);
  const height = 1 + Math.floor(random() * 4);
  const rows = Array.from({ length: height }, () => [
    ...(named ? [name(random)] : []),
    ...columns.map((draw) => draw(random)),
  ]);
  const width = elementAt(rows, 0).length;
  const titles = Array.from({ length: width }, (_, at): Scalar => `column ${"abcdefghi"[at]}`);
  if (named && random() < 0.2) titles[0] = pick(null, 0, "", 5)(random);
  const headed = random() < 0.3 ? [titles] : [];
  const blank = random() < 0.15 ? [Array<Scalar>(width).fill(pick(null, 0)(random))] : [];
  return { rows: [...headed, ...rows, ...blank], how: "reference" };
}

const list =
  (draw: Draw) =>
  (random: Random): Drawn => {
    if (random() < 0.4) return { rows: [[null]], how: "omitted" };
    const length = 1 + Math.floor(random() * 5);
    const content = Array.from({ length }, (_, at) =>
      at === 0 && random() < 0.2 ? heading(random) : draw(random),
    );
    const rows = random() < 0.5 ? [content] : content.map((cell) => [cell]);
    return { rows, how: random() < 0.1 ? "as text" : "reference" };
  };
/** The same, never left out. */
const givenList =
  (draw: Draw) =>
  (random: Random): Drawn => {
    for (;;) {
      const drawn = list(draw)(random);
      if (drawn.how !== "omitted") return drawn;
    }
  };
const one =
  (draw: Draw, omitted: number) =>
  (random: Random): Drawn =>
    random() < omitted
      ? { rows: [[null]], how: "omitted" }
      : {
          rows: random() < 0.03 ? [[draw(random)], [draw(random)]] : [[draw(random)]],
          how: "reference",
        };
const each =
  (...of: readonly ((random: Random) => Drawn)[]) =>
  (random: Random) =>
    of.map((draw) => draw(random));

const scale = mostly(pick("reserve", "rpe", " RPE", null), 0.95);
const chartReps = mostly(pick(1, 2, 3, 5, 8, 12, 16, 29, null), 0.97);
const chartReserves = mostly(pick(0, 0.5, 1, 2, 3, 4, null), 0.97);

export const draws: Readonly<Record<string, Draws>> = {
  E1RM: { arguments: lifted(data(load), data(reps), optional(reserve), word(equation)) },
  E1RMBAND: {
    arguments: lifted(
      ...[data(load), data(reps), optional(reserve), optional(mostly(pick(0, 1, 2, 0.5)))],
      ...[word(equationOrAll), part("low", "estimate", "high")],
    ),
  },
  PERCENT1RM: { arguments: lifted(data(reps), optional(reserve), word(equation)) },
  REPSAT: {
    arguments: lifted(
      ...[data(load), data(mostly(between(100, 260))), optional(reserve), word(equation)],
    ),
  },
  RELATIVESTRENGTH: {
    arguments: lifted(
      ...[data(load), data(mostly(between(45, 120)))],
      optional(pick(1, 2 / 3, 0.5, null, 0, -1, "0,5", "DNS")),
    ),
  },
  LOADFOR: {
    arguments: lifted(
      ...[data(load), data(reps), optional(reserve), optional(increment), word(equation)],
    ),
  },
  NEXTLOAD: {
    arguments: lifted(
      ...[data(load), data(reps), data(reserve), data(reps), data(reserve)],
      ...[optional(increment), word(equation)],
    ),
  },
  ROUNDLOAD: {
    arguments: lifted(
      ...[data(load), data(increment)],
      word(pick("nearest", "down", "UP", null, 0, "sideways", " Down", true, "#N/A", "|down|")),
    ),
  },
  LOADCHART: {
    arguments: each(
      ...[one(load, 0), list(chartReps), list(chartReserves), one(increment, 0.4)],
      ...[one(equation, 0.4), one(scale, 0.4)],
    ),
  },
  PERCENTCHART: {
    arguments: each(list(chartReps), list(chartReserves), one(equation, 0.4), one(scale, 0.4)),
  },
  WARMUPSETS: {
    arguments: (random) => {
      const drawn = lifted(
        ...[data(load), optional(mostly(pick(0, 15, 20, 40))), optional(increment)],
        part("summary", "sets", "volume load"),
      )(random);
      return [...drawn.slice(0, 3), steps(random), ...drawn.slice(3)];
    },
  },
  RPETORIR: { arguments: lifted(data(mostly(between(4, 11)))) },
  RIRTORPE: { arguments: lifted(data(reserve)) },
  RESERVETAPER: {
    arguments: (random) => {
      const drawn = lifted(
        ...[data(mostly(between(1, 12, 1))), data(reserve), data(reserve)],
        ...[optional(mostly(between(1, 12, 1))), optional(mostly(pick(0, 0.5, 1)))],
      )(random);
      // Without a week it is all weeks of one taper.
      const alone = elementAt(drawn, 3).how === "omitted";
      return alone ? drawn.map((each) => ({ ...each, rows: [[cellAt(each.rows, 0, 0)]] })) : drawn;
    },
  },
  PLANCHECK: {
    arguments: lifted(
      ...[data(load), data(reps), optional(reserve), data(load), data(reps), optional(reserve)],
      ...[word(equation), part("load off", "reps off", "reserve off", "strength off")],
    ),
    digits: 1e-10,
  },
  VOLUMELOAD: { arguments: columns(data(load), data(reps), optional(reps), keys) },
  CLOSESETS: {
    arguments: columns(
      data(reps),
      data(reserve),
      optional(reps),
      only(mostly(pick(0, 2, 3.5, 4))),
      keys,
    ),
  },
  SESSIONLOAD: {
    arguments: lifted(data(mostly(between(1, 11))), data(mostly(between(10, 120, 5)))),
  },
  WEEKMONOTONY: { arguments: week() },
  WEEKSTRAIN: { arguments: week() },
  MDC: { arguments: lifted(data(spread), optional(confidence), optional(df)), digits: 1e-9 },
  SWC: { arguments: columns(data(score), only(mostly(pick(0.2, 0.5, null, 0)))) },
  CHANGESCORE: {
    arguments: lifted(
      ...[data(score), data(score), data(spread), optional(mostly(pick(0, 1, 3)))],
      ...[optional(confidence), optional(df)],
      part("change", "percent", "low", "high", "ratio", "p", "chance", "reading"),
    ),
    digits: 1e-9,
  },
  RESPONDERS: {
    arguments: columns(
      ...[data(score), data(score), only(mostly(pick(0, 1, 3, -2, 0.1)), 0), only(confidence)],
      {
        ...part("n", "dropped", "responders", "share", "low", "high", "no increase"),
        single: true,
      },
    ),
    digits: 1e-9,
  },
  PAIREDCHANGE: {
    arguments: columns(data(score), data(score), only(confidence), {
      ...part(
        ...(["n", "dropped", "mean before", "mean after", "mean change", "sd of change"] as const),
        ...[
          "standard error",
          "low",
          "high",
          "t",
          "df",
          "p",
          "effect size",
          "effect standard error",
        ],
      ),
      single: true,
    }),
    digits: 1e-8,
  },
  RELIABILITY: {
    arguments: each(
      (random) =>
        squad(random, {
          athletes: 1 + Math.floor(random() * 8),
          columns: Number(pick(1, 2, 2, 2, 3, 4)(random)),
          headed: random() < 0.5,
        }),
      one(confidence, 0.5),
      one(
        part(
          ...(["n", "dropped", "trials", "shift", "shift low", "shift high"] as const),
          ...["detectable change", "typical error", "df", "error low", "error high"],
          ...["error percent", "icc consistency", "icc consistency low", "icc consistency high"],
          ...["icc agreement", "icc agreement low", "icc agreement high"],
        ).draw,
        0.5,
      ),
    ),
    digits: 1e-8,
  },
  GROUPCHANGE: {
    arguments: (random) => [
      ...studied(random, 1, 0.5),
      ...each(
        one(confidence, 0.5),
        one(
          part(
            ...(["group A", "group B", "n A", "lost A", "change A", "low A", "high A"] as const),
            ...["p A", "n B", "lost B", "change B", "low B", "high B", "p B", "difference"],
            ...["standard error", "low", "high", "t", "df", "p", "adjusted difference"],
            ...["adjusted standard error", "adjusted low", "adjusted high", "adjusted df"],
            ...["adjusted p", "effect size", "effect standard error", "extra spread in A"],
            ...["extra spread low", "extra spread high", "extra spread p", "reading"],
          ).draw,
          0.6,
        ),
      )(random),
    ],
    digits: 1e-8,
  },
  TESTTABLE: {
    arguments: (random) => [
      ...studied(random, Number(pick(1, 2, 3)(random)), 0.95),
      one(confidence, 0.5)(random),
    ],
    digits: 1e-8,
  },
  RESPONSESHARE: {
    arguments: lifted(
      ...[data(score), data(spread), data(spread), data(score), optional(size), optional(df)],
      optional(confidence),
      part(
        ...(["observed share", "share if all alike", "share without noise", "true sd"] as const),
        ...["true sd low", "true sd high", "p", "reading"],
      ),
    ),
    digits: 1e-8,
  },
  PLANWEEK: {
    arguments: (random) => {
      const [most, week, ...rest] = lifted(
        ...[data(load), { ...data(mostly(between(1, 9, 1))), omitted: 0 }],
        part(
          "load",
          "sets",
          "reserve",
          "reps low",
          "reps high",
          "percent",
          "volume load",
          "block",
          "week",
        ),
        ...[optional(increment), word(equation)],
      )(random);
      return [most!, blocks(random), week!, ...rest];
    },
  },
  BLOCKPLAN: {
    arguments: each(
      (random) => (random() < 0.6 ? one(load, 0)(random) : givenList(load)(random)),
      ...[blocks, one(increment, 0.4), one(equation, 0.4)],
    ),
  },
  LOGSUMMARY: {
    arguments: (random) => {
      const [by, ...drawn] = columns(
        ...[{ ...keys, omitted: 0 }, data(load), data(reps), optional(reserve), optional(reps)],
        ...[only(mostly(pick(0, 2, 3.5, 4))), only(mostly(pick(0, 5, 12))), only(equation)],
      )(random);
      return [by!, ...drawn];
    },
  },
  MUSCLESETS: {
    arguments: (random) => {
      const [exercise, done, ...rest] = columns(
        ...[{ ...exercises, omitted: 0 }, data(reps), optional(reserve), optional(reps)],
        ...[only(mostly(pick(0, 2, 3.5, 4))), keys],
      )(random);
      return [exercise!, done!, shares(random), ...rest];
    },
  },
  FITCURVE: { arguments: ownSets, digits: 1e-8 },
  RESERVECHECK: {
    arguments: columns(
      ...[data(mostly(between(1, 9, 1))), data(reserve), data(mostly(between(9, 18, 1)))],
      ...[{ ...keys, draw: mostly(keys.draw, 0.95) }, keys, only(confidence)],
      {
        ...part(
          ...(["n", "dropped", "bias", "sd", "mean miss", "low", "high"] as const),
          ...["agree low", "agree high", "p"],
        ),
        omitted: 0.7,
        single: true,
      },
    ),
    digits: 1e-9,
  },
  RESPONDERDIFF: {
    arguments: lifted(
      ...[data(mostly(between(0, 14, 1))), data(mostly(between(8, 30, 1)))],
      ...[data(mostly(between(0, 14, 1))), data(mostly(between(8, 30, 1))), optional(confidence)],
      part("share A", "share B", "difference", "low", "high", "p"),
    ),
    digits: 1e-9,
  },
  EQUIVALENCE: {
    arguments: lifted(
      ...[data(score), data(spread), data(df), data(spread)],
      ...[optional(mostly(pick(0.05, 0.1, 0.5, null)))],
      part("p low side", "p high side", "p", "low", "high", "reading"),
    ),
    digits: 1e-9,
  },
  STUDYDIFF: {
    arguments: lifted(
      ...[data(score), data(spread), data(size), data(score), data(spread), data(size)],
      ...[
        optional(confidence),
        part("difference", "low", "t", "df", "p", "effect size", "effect high"),
      ],
    ),
    digits: 1e-9,
  },
  STUDYCHANGEDIFF: {
    arguments: lifted(
      ...[data(score), data(score), data(spread), data(size)],
      ...[data(score), data(score), data(spread), data(size)],
      ...[data(mostly(pick(0, 0.5, 0.9, -1, 1.1))), optional(confidence)],
      part("difference", "effect size", "effect standard error", "effect low", "effect high"),
    ),
    digits: 1e-9,
  },
  SDCHANGE: {
    arguments: lifted(data(spread), data(spread), data(mostly(pick(0, 0.5, 0.9, -1, 1, 1.1)))),
  },
  SDFROMCI: {
    arguments: lifted(data(score), data(score), data(size), optional(confidence)),
    digits: 1e-9,
  },
  SEFROMCI: {
    arguments: lifted(data(score), data(score), optional(confidence), optional(df)),
    digits: 1e-9,
  },
};

interface Squad {
  readonly athletes: number;
  readonly columns: number;
  readonly headed: boolean;
}

/** The scores of a squad, a column a test; now and then they hardly differ, or each athlete's are the same. */
function squad(random: Random, { athletes, columns, headed }: Squad): Drawn {
  const usual = random() < 0.15 ? pick(20, 20.1, 25) : between(-20, 80, 0.1);
  const isClean = random() < 0.8;
  const scores = cells(athletes, columns, () => {
    if (random() < 0.05) return pick(null, 0, "DNS", "–", "", " ")(random);
    return isClean ? usual(random) : mostly(usual, 0.97)(random);
  });
  const alike = random() < 0.1 ? scores.map((row) => row.fill(elementAt(row, 0))) : scores;
  const headings = headed ? cells(1, columns, () => heading(random)) : [];
  return { rows: [...headings, ...alike], how: random() < 0.1 ? "as text" : "reference" };
}

const LABELS = [
  ["Row", "Bike"],
  ["east  crew", "West"],
  [1, 2],
  [true, "b"],
] as const;

/** Two groups before and after in so many tests, with headings so often, and which of them is the first. */
function studied(random: Random, columns: number, often: number): Drawn[] {
  const athletes = 2 + Math.floor(random() * 12);
  const headed = random() < often;
  const [one, other] = elementAt(LABELS, Math.floor(random() * LABELS.length));
  const isClean = random() < 0.85;
  const odds = random();
  const label: Draw = isClean
    ? pick(one, other, other, typeof one === "string" ? ` ${one.toUpperCase()}` : one)
    : pick(one, one, other, other, one, other, null, 0, "", "c", "#N/A", "0", 1);
  const labels = cells(athletes, 1, () => label(random));
  const top = [[pick("group", "crew", null)(random)]];
  const first = pick(null, 0, "", one, other, `${other} `, "nobody", "#REF!");
  const lying = columns === 1 && odds < 0.05;
  const turned = (drawn: Drawn): Drawn =>
    lying ? { ...drawn, rows: [drawn.rows.map((row) => cellAt([row], 0, 0))] } : drawn;
  const test = (wide: number) => {
    const alone = random() < 0.02;
    return squad(random, {
      athletes: alone ? 1 : random() < 0.98 ? athletes : athletes + 1,
      columns: wide,
      headed: headed && !alone,
    });
  };
  return [
    turned({
      rows: [...(headed ? top : []), ...labels],
      how: random() < 0.1 ? "as text" : "reference",
    }),
    turned(test(columns)),
    turned(test(random() < 0.98 ? columns : columns + 1)),
    isClean || random() < 0.5
      ? { rows: [[pick(null, "", one, other)(random)]], how: "reference" }
      : { rows: [[first(random)]], how: random() < 0.3 ? "omitted" : "reference" },
  ];
}

/** A week of daily loads, in any shape. */
function week() {
  return (random: Random): Drawn[] => {
    const [rows, columns] = pickShape(random);
    const calm = random() < 0.7;
    const day = mostly(pick(0, 0, 300, 450, 500, 620), calm ? 1 : 0.9);
    return [
      {
        rows: cells(rows, columns, () => day(random)),
        how: random() < 0.1 ? "as text" : "reference",
      },
    ];
  };
}

const SHAPES = [
  [7, 1],
  [1, 7],
  [1, 1],
  [2, 1],
  [2, 3],
] as const;

const pickShape = (random: Random) => elementAt(SHAPES, Math.floor(random() * SHAPES.length));
