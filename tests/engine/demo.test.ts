import { readFileSync } from "node:fs";
import type { ICellData, IWorkbookData } from "@univerjs/core";
import { beforeAll, describe, expect, it } from "vitest";
import { readCatalogue } from "../../src/tools/catalogue";
import { readDemo } from "../../src/tools/demo";
import { parseCsv } from "../../src/readySheets/csv";
import type { HeadlessWorkbook } from "../../src/engine/headless";
import { elementAt, named, only } from "../present";
import { computedDemo } from "../theDemo";

/*
 * The demo as a coach opens it, computed without a screen. What its cells should hold is worked out
 * here a second time, in plain arithmetic from the demo's own inputs, and not by our functions.
 */

let data: IWorkbookData;
let book: HeadlessWorkbook;

beforeAll(async () => {
  data = readDemo();
  book = await computedDemo();
}, 120_000);

const letters = (column: number): string =>
  (column >= 26 ? letters(Math.floor(column / 26) - 1) : "") +
  String.fromCharCode(65 + (column % 26));

const numberOf = (letter: string): number =>
  [...letter].reduce((sum, one) => sum * 26 + one.charCodeAt(0) - 64, 0) - 1;

interface DemoCell {
  readonly sheet: string;
  readonly address: string;
  readonly stored: ICellData | undefined;
}

/** Every cell of the demo: those that hold something, and those that a spill may fill. */
function allCells(): DemoCell[] {
  return data.sheetOrder.flatMap((id) => {
    const { name, cellData, rowCount, columnCount } = named(data.sheets, id);
    return Array.from({ length: rowCount! * columnCount! }, (_cell, at) => {
      const row = Math.floor(at / columnCount!);
      const column = at % columnCount!;
      const stored = cellData?.[row]?.[column];
      return { sheet: name!, address: `${letters(column)}${row + 1}`, stored };
    });
  });
}

const formulas = () =>
  allCells().flatMap(({ sheet, address, stored }) =>
    stored?.f ? [{ sheet, address, formula: stored.f }] : [],
  );

const number = (sheet: string, address: string): number => {
  const value = book.read(sheet, address);
  if (typeof value !== "number") throw new Error(`${sheet} ${address} holds ${String(value)}`);
  return value;
};

/** The cells of a range, row by row. */
function range(sheet: string, address: string) {
  const [, c1 = "", r1, c2 = "", r2] = /^([A-Z]+)(\d+):([A-Z]+)(\d+)$/.exec(address)!;
  const columns = Array.from({ length: numberOf(c2) - numberOf(c1) + 1 }, (_column, i) =>
    letters(numberOf(c1) + i),
  );
  return Array.from({ length: Number(r2) - Number(r1) + 1 }, (_row, i) =>
    columns.map((column) => book.read(sheet, `${column}${Number(r1) + i}`)),
  );
}

const column = (sheet: string, address: string) => range(sheet, address).map(([cell]) => cell);
const isNumber = (value: unknown): value is number => typeof value === "number";

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]) => sum(values) / values.length;
const variance = (values: readonly number[]) =>
  sum(values.map((value) => (value - mean(values)) ** 2)) / (values.length - 1);
const sd = (values: readonly number[]) => Math.sqrt(variance(values));

/** Epley's curve, straight from 1 rep to 2. */
const fraction = (t: number) => (t < 2 ? 1 + (t - 1) * (1 / (1 + 2 / 30) - 1) : 1 / (1 + t / 30));
/** The nearest multiple, a tie down. */
const round = (load: number, step: number) => Math.ceil(load / step - 0.5 - 1e-9) * step;

describe("the demo as a whole", () => {
  it("holds no error but the two that it teaches with", () => {
    const errors = allCells()
      .map(({ sheet, address }) => ({ sheet, address, value: book.read(sheet, address) }))
      .filter(({ value }) => typeof value === "string" && /^#[A-Z/0]+[!?A]?$/.test(value));
    expect(errors).toEqual([
      { sheet: "Start", address: "E31", value: "#VALUE!" },
      { sheet: "Start", address: "E33", value: "#VALUE!" },
    ]);
  });

  it("says beside the two what their messages say", () => {
    for (const row of [31, 33]) {
      expect(book.read("Start", `G${row}`)).toBe(book.message("Start", `E${row}`));
    }
  });

  it("has a value for every formula", () => {
    const empty = formulas().filter(({ sheet, address }) => book.read(sheet, address) === null);
    expect(empty).toEqual([]);
  });

  it("uses every function of the catalogue", () => {
    const used = new Set(formulas().flatMap(({ formula }) => callsIn(formula).map((c) => c.name)));
    expect(readCatalogue().functions.filter(({ name }) => !used.has(name))).toEqual([]);
  });

  it("uses the one-cell form of every function that has one", () => {
    const calls = formulas().flatMap(({ formula }) => callsIn(formula));
    const unused = readCatalogue()
      .functions.map(({ name, parameters }) => ({
        name,
        part: parameters.findIndex((parameter) => parameter.name === "part"),
      }))
      .filter(({ part }) => part >= 0)
      .filter(
        ({ name, part }) => !calls.some((c) => c.name === name && (c.args[part] ?? "") !== ""),
      )
      .map(({ name }) => name);
    expect(unused).toEqual([]);
  });

  it("shows no number with more digits than make sense", () => {
    const bare = allCells().filter(({ sheet, address, stored }) => {
      const value = book.read(sheet, address);
      if (!isNumber(value) || Math.abs(value * 100 - Math.round(value * 100)) < 1e-9) return false;
      const style = typeof stored?.s === "string" ? data.styles[stored.s] : stored?.s;
      return [undefined, "General"].includes(style?.n?.pattern);
    });
    expect(bare.map(({ sheet, address }) => `${sheet} ${address}`)).toEqual([]);
  });

  it("carries the cautions that the project carries everywhere", () => {
    const cautions = JSON.parse(
      readFileSync(new URL("../../shared/cautions.json", import.meta.url), "utf8"),
    ) as string[];
    const shown = column("Start", "B1:B60");
    for (const caution of cautions) expect(shown).toContain(caution);
  });

  it("lists its other sheets on the first", () => {
    const names = data.sheetOrder.map((id) => named(data.sheets, id).name);
    expect(["Start", ...column("Start", "G5:G19")]).toEqual(names);
  });
});

/** The calls of our functions in a formula, each with its arguments as they are written. */
function callsIn(formula: string): { name: string; args: string[] }[] {
  return [...formula.matchAll(/SPARE\.([A-Z0-9]+)\(/g)].map((match) => ({
    name: elementAt(match, 1),
    args: argumentsFrom(formula, match.index + match[0].length),
  }));
}

function argumentsFrom(formula: string, start: number): string[] {
  const args = [""];
  let depth = 0;
  let quoted = false;
  for (const letter of formula.slice(start)) {
    if (letter === '"') quoted = !quoted;
    if (!quoted && "({".includes(letter)) depth++;
    if (!quoted && ")}".includes(letter) && depth-- === 0) break;
    if (!quoted && depth === 0 && letter === ",") args.push("");
    else args[args.length - 1] += letter;
  }
  return args.map((arg) => arg.trim());
}

describe("loads", () => {
  it("follow the equation on the first sheet", () => {
    expect(number("Start", "C11")).toBe(112.5);
    expect(number("Start", "C13")).toBeCloseTo(fraction(7), 12);
    expect(number("Start", "C15")).toBeCloseTo(30 * (140 / 112.5 - 1), 10);
  });

  it("fill the charts", () => {
    const shares = range("Percentages", "C11:G22");
    const loads = range("Percentages", "J11:N22");
    shares.forEach((row, reps) =>
      row.forEach((share, reserve) => {
        expect(share).toBeCloseTo(fraction(reps + 1 + reserve), 12);
        const load = round(150 * fraction(reps + 1 + reserve), 2.5);
        expect(loads[reps]?.[reserve]).toBeCloseTo(load, 9);
      }),
    );
  });

  it("lie on a curve that no other 1RM or constant fits better", () => {
    const sets = range("Percentages", "C27:E33") as [load: number, reps: number, reserve: number][];
    const misses = (oneRepMax: number, constant: number) =>
      sum(
        sets.map(([load, reps, reserve]) => {
          const allowed = 1 + constant * (oneRepMax / load - 1);
          return (reps + reserve - allowed) ** 2;
        }),
      );
    const [best, constant] = [number("Percentages", "C37"), number("Percentages", "C40")];
    const least = misses(best, constant);
    for (const off of [0.999, 1.001]) {
      expect(misses(best * off, constant)).toBeGreaterThan(least);
      expect(misses(best, constant * off)).toBeGreaterThan(least);
    }
    expect(number("Percentages", "C44")).toBeCloseTo(Math.sqrt(least / (sets.length - 2)), 6);
  });

  it("follow the blocks, week by week", () => {
    const weeks = range("Block plan", "B19:J29");
    expect(weeks).toHaveLength(11);
    for (const [, , sets, low, high, reserve, , load, volume] of weeks) {
      const reps = (Number(low) + Number(high)) / 2;
      expect(load).toBeCloseTo(round(150 * fraction(reps + Number(reserve)), 2.5), 9);
      expect(volume).toBeCloseTo(Number(sets) * reps * Number(load), 9);
    }
    expect(column("Block plan", "G19:G29")).toEqual([3, 3, 2, 2, 4, 3, 2, 1, 4, 2, 1]);
    expect(column("Block plan", "M19:M27")).toEqual([3, 2, 1, 3, 2, 1, 3, 2, 1]);
  });

  it("fill the squad's grid, lifters and their lifts down and weeks across", () => {
    const [headings = [], ...list] = range("Squad plan", "R19:V33");
    const maxima = list.flatMap(([lifter, ...lifts]) =>
      lifts.map((oneRepMax, at) => [lifter, String(headings[at + 1]).split(",")[0], oneRepMax]),
    );
    const grid = range("Squad plan", "E20:M75");
    const reserves = only(range("Squad plan", "E18:M18")) as number[];
    expect(reserves).toEqual([3, 3, 2, 2, 3, 2, 1, 2, 1]);
    expect(maxima).toHaveLength(14 * 4);
    expect(range("Squad plan", "B20:D75")).toEqual(maxima);
    maxima.forEach(([, , given], lifter) =>
      reserves.forEach((reserve, week) => {
        const reps = week < 4 ? 11 : week < 7 ? 7 : 4;
        const load = round(Number(given) * fraction(reps + reserve), 2.5);
        expect(grid[lifter]?.[week]).toBeCloseTo(load, 9);
      }),
    );
  });

  it("go on the bar as plates of the rack, and lead to the next set", () => {
    const planned = range("Today", "D15:F22");
    const done = range("Today", "G15:J22");
    const more = range("Today", "Z15:AF22");
    const target = fraction(8 + 3);
    planned.forEach(([e1rm, load, side], row) => {
      expect(load).toBeCloseTo(round(Number(e1rm) * target, 2.5), 9);
      const plates = String(side).split(" + ").map(Number);
      expect(20 + 2 * sum(plates)).toBeCloseTo(Number(load), 9);
      const [lifted, did, left, next] = elementAt(done, row);
      const [low, estimate, high, , , , strength] = elementAt(more, row);
      if (left === null) {
        expect([next, low, estimate, high, strength]).toEqual(["", "", "", "", ""]);
        return;
      }
      const e1rmDone = Number(lifted) / fraction(Number(did) + Number(left));
      expect(estimate).toBeCloseTo(e1rmDone, 9);
      expect(next).toBeCloseTo(round(e1rmDone * target, 2.5), 9);
      expect(strength).toBeCloseTo(e1rmDone / (Number(load) / target) - 1, 9);
    });
    // The rows for the log are the sets as they were done.
    expect(range("Today", "N15:R22")).toEqual(
      done.map(([load, reps, left], row) => [
        ...[book.read("Today", `B${row + 15}`), "Back squat"],
        ...[load, reps, left ?? ""],
      ]),
    );
  });
});

/** A row of the log as it stands in its file; what is no number is null. */
interface LoggedSet {
  readonly week: string;
  readonly lifter: string;
  readonly lift: string;
  readonly load: number | null;
  readonly reps: number | null;
  readonly reserve: number | null;
  readonly sets: number;
}

const csv = (file: string) =>
  parseCsv(
    readFileSync(new URL(`../../shared/demo/sheets/${file}`, import.meta.url), "utf8"),
  ).slice(1);

const numberIn = (text = "") => (/^[\d.]+$/.test(text) ? Number(text) : null);

const log: readonly LoggedSet[] = csv("log.csv").map(
  ([, week = "", lifter = "", lift = "", load, reps, reserve, sets]) => ({
    week,
    lifter,
    lift,
    load: numberIn(load),
    reps: numberIn(reps),
    reserve: numberIn(reserve),
    sets: numberIn(sets) ?? 1,
  }),
);

const trained = log.filter(({ reps }) => reps !== null);
const volume = (sets: readonly LoggedSet[]) =>
  sum(sets.map(({ load, reps, sets: count }) => count * (load ?? 0) * (reps ?? 0)));
const closeTo = (within: number, sets: readonly LoggedSet[]) =>
  sum(sets.filter((s) => s.reserve !== null && s.reserve <= within).map((s) => s.sets));

describe("the log", () => {
  it("is a long one, and gives every row its own e1RM and RPE", () => {
    expect(log.length).toBeGreaterThan(800);
    const shown = range("Training log", `I4:J${log.length + 3}`);
    log.forEach(({ load, reps, reserve }, row) => {
      const [e1rm, rpe] = elementAt(shown, row);
      if (load === null || reps === null || reserve === null) expect(e1rm ?? "").toBe("");
      else expect(e1rm).toBeCloseTo(load / fraction(reps + reserve), 9);
      expect(rpe ?? "").toBe(reserve === null || reserve > 5 ? "" : 10 - reserve);
    });
  });

  it("is summed up week by week, with nothing lost", () => {
    const rows = range("Weekly summary", "B7:K17");
    rows.forEach(([week, sets, reps, volumeLoad, close]) => {
      const own = trained.filter((set) => set.week === String(week));
      expect(sets).toBe(sum(own.map((set) => set.sets)));
      expect(reps).toBe(sum(own.map((set) => set.sets * set.reps!)));
      expect(volumeLoad).toBeCloseTo(volume(own), 6);
      expect(close).toBe(closeTo(4, own));
    });
    expect(sum(rows.map(([, sets]) => Number(sets)))).toBe(sum(trained.map((set) => set.sets)));
    expect(number("Weekly summary", "N14")).toBeCloseTo(volume(trained), 6);
  });

  it("is summed up by lifter, by lift and by muscle", () => {
    for (const [lifter, , , volumeLoad] of range("Weekly summary", "B20:E27")) {
      expect(volumeLoad).toBeCloseTo(volume(trained.filter((set) => set.lifter === lifter)), 6);
    }
    for (const [lifter, close] of range("Weekly summary", "O7:P14")) {
      expect(close).toBe(
        closeTo(
          2,
          trained.filter((set) => set.lifter === lifter),
        ),
      );
    }
    const shares = range("Weekly summary", "B32:I37");
    for (const [week, ...muscles] of range("Weekly summary", "B41:I51")) {
      const own = trained.filter((set) => set.week === String(week));
      muscles.forEach((close, muscle) => {
        const expected = shares.map(
          ([lift, ...of]) =>
            Number(of[muscle]) *
            closeTo(
              4,
              own.filter((set) => set.lift === lift),
            ),
        );
        expect(close).toBeCloseTo(sum(expected), 9);
      });
    }
  });

  it("has a week whose monotony and strain are those of its daily loads", () => {
    const loads = range("Weekly summary", "N20:O26").map(([r, m]) => Number(r) * Number(m));
    const monotony = mean(loads) / sd(loads);
    expect(number("Weekly summary", "N28")).toBeCloseTo(monotony, 9);
    expect(number("Weekly summary", "N29")).toBeCloseTo(sum(loads) * monotony, 6);
  });

  it("gives the trend its sets: a row a day, today inside its interval", () => {
    const lifter = book.read("Strength trend", "C4");
    const lift = book.read("Strength trend", "H4");
    const own = csv("log.csv").filter((row) => row[2] === lifter && row[3] === lift);
    const whole = own.filter(([, , , , ...cells]) =>
      cells.slice(0, 3).every((text) => numberIn(text) !== null),
    );
    const beats = (a: string[], b: string[]) =>
      a[0] === b[0] &&
      Number(a[4]) >= Number(b[4]) &&
      Number(a[5]) >= Number(b[5]) &&
      (a[4] !== b[4] || a[5] !== b[5]);
    const counted = whole.filter(
      (set) => Number(set[5]) <= 12 && (set[6] !== "0" || !whole.some((one) => beats(one, set))),
    );
    const days = new Set(counted.map(([date]) => date)).size;
    const trend = range("Strength trend", "G8:J90").filter(([date]) => isNumber(date));
    expect(trend).toHaveLength(days);
    expect(number("Strength trend", "N25")).toBe(days);
    const [today, low, high, rise] = column("Strength trend", "N20:N23").map(Number) as [
      today: number,
      low: number,
      high: number,
      rise: number,
    ];
    expect(trend.at(-1)!.slice(1)).toEqual([today, low, high]);
    expect(low).toBeLessThan(today);
    expect(high).toBeGreaterThan(today);
    expect(rise).toBeCloseTo(today / Number(trend[0]?.[1]) - 1, 9);
    const squad = range("Strength trend", "M8:N15").find(([name]) => name === lifter);
    expect(squad![1]).toBeCloseTo(today, 9);
    const everybody = range("Who got stronger", "B8:J55");
    const ofLifter = everybody.find(([name, of]) => name === lifter && of === lift)!;
    expect(ofLifter.slice(2, 7)).toEqual([days, counted.length, today, low, high]);
    expect(new Set(everybody.map(([name]) => name)).size).toBe(8);
  });
});

describe("calls of reserve", () => {
  const calls = csv("reserve-calls.csv")
    .map(([, week, lifter, , at, called, all]) => ({
      week,
      lifter,
      cells: [at, called, all].map(numberIn),
    }))
    .filter(({ cells }) => cells.every((cell) => cell !== null))
    .map(({ week, lifter, cells: [at, called, all] }) => ({
      week,
      lifter,
      error: all! - at! - called!,
    }));

  it("are judged lifter by lifter for the squad", () => {
    const lifters = [...new Set(calls.map(({ lifter }) => lifter))];
    const own = lifters.map((lifter) =>
      calls.filter((call) => call.lifter === lifter).map(({ error }) => error),
    );
    expect(number("Reserve calls", "K7")).toBe(calls.length);
    expect(number("Reserve calls", "K9")).toBeCloseTo(mean(own.map(mean)), 9);
    // Bland and Altman 2007: the components within and between lifters, unequal numbers of sets.
    const total = calls.length;
    const grand = mean(calls.map(({ error }) => error));
    const within = sum(own.map((errors) => variance(errors) * (errors.length - 1)));
    const msw = within / (total - own.length);
    const msb =
      sum(own.map((errors) => errors.length * (mean(errors) - grand) ** 2)) / (own.length - 1);
    const size = (total - sum(own.map((errors) => errors.length ** 2)) / total) / (own.length - 1);
    const between = Math.max(0, (msb - msw) / size);
    expect(number("Reserve calls", "K10")).toBeCloseTo(Math.sqrt(msw + between), 9);
  });

  it("are judged lifter by lifter alone, and miss less at the end than at the start", () => {
    for (const [lifter, n, bias, spread] of range("Reserve calls", "M22:P29")) {
      const errors = calls.filter((call) => call.lifter === lifter).map(({ error }) => error);
      expect(n).toBe(errors.length);
      expect(bias).toBeCloseTo(mean(errors), 9);
      expect(spread).toBeCloseTo(sd(errors), 9);
    }
    expect(number("Reserve calls", "K22")).toBeLessThan(number("Reserve calls", "K21"));
  });
});

describe("the test day", () => {
  const squat = () =>
    range("Test day", "C7:J26").map(([crew, , , first, before, , , after]) => ({
      crew,
      first,
      before: Number(before),
      after,
    }));
  const changes = (crew: string) =>
    squat()
      .filter((rower) => rower.crew === crew && isNumber(rower.after))
      .map(({ before, after }) => Number(after) - before);

  it("finds the typical error in two tests without training between", () => {
    const differences = squat()
      .filter(({ first }) => isNumber(first))
      .map(({ first, before }) => before - Number(first));
    const typicalError = sd(differences) / Math.SQRT2;
    expect(differences).toHaveLength(19);
    expect(number("Test day", "C38")).toBeCloseTo(typicalError, 9);
    expect(number("Crews compared", "C14")).toBeCloseTo(typicalError, 9);
    // One detectable change, wherever the demo shows it.
    const detectable = number("Test day", "C39");
    expect(number("Crews compared", "C13")).toBeCloseTo(detectable, 12);
    expect(number("Crews compared", "C31")).toBeCloseTo(detectable, 12);
    // Student's t at 0.975 with 18 degrees of freedom, from any table.
    expect(detectable).toBeCloseTo(2.100922 * Math.SQRT2 * typicalError, 5);
    const readings = column("Test day", "M7:M26");
    const increases = readings.filter((reading) => String(reading).startsWith("real increase"));
    expect(number("Test day", "C44")).toBe(increases.length);
    const answer = book.read("Test day", "B3");
    expect(answer).toContain(`${increases.length} of 18 lifters gained more than test error`);
    squat().forEach(({ before, after }, row) => {
      const shown = book.read("Test day", `N${row + 7}`) ?? "";
      if (!isNumber(after)) return expect([shown, readings[row] ?? ""]).toEqual(["", ""]);
      expect(shown).toBeCloseTo(after - before, 9);
      const real = Math.abs(after - before) > 2.100922 * Math.SQRT2 * typicalError;
      expect(String(readings[row]).startsWith("real")).toBe(real);
    });
  });

  it("draws each lifter's change towards the squad's, and leaves the order as it was", () => {
    const rows = range("Who changed", "B7:I24");
    const complete = squat().filter(({ after }) => isNumber(after));
    expect(rows).toHaveLength(complete.length);
    const gains = complete.map(({ before, after }) => Number(after) - before);
    rows.forEach(([, reading, change, shrunk, low, high], row) => {
      const gain = elementAt(gains, row);
      expect(change).toBeCloseTo(gain, 9);
      const drawn = Number(shrunk) - gain;
      expect(Math.sign(drawn)).toBe(Math.sign(mean(gains) - gain));
      expect(Math.abs(drawn)).toBeLessThan(Math.abs(mean(gains) - gain));
      const real = Number(low) > 0 || Number(high) < 0;
      expect(String(reading).startsWith("real")).toBe(real);
    });
  });

  it("finds each lifter's gain a week in jumps on four test days", () => {
    const jumps = range("Test days", "B7:D38").filter(([, , jump]) => isNumber(jump));
    const rows = range("Test days", "F7:N14");
    for (const [rower, tests, slope, , , shrunk, next] of rows) {
      const own = jumps.filter(([name]) => name === rower);
      expect(tests).toBe(own.length);
      if (own.length < 2) {
        expect([slope, shrunk, next].map((cell) => cell ?? "")).toEqual(["", "", ""]);
        continue;
      }
      const days = own.map(([, date, jump]) => ({ week: Number(date) / 7, height: Number(jump) }));
      const week = mean(days.map((day) => day.week));
      const height = mean(days.map((day) => day.height));
      const products = days.map((day) => (day.week - week) * (day.height - height));
      const squares = days.map((day) => (day.week - week) ** 2);
      expect(slope).toBeCloseTo(sum(products) / sum(squares), 9);
      const ahead = Math.max(...days.map((day) => day.week)) + 1 - week;
      expect(next).toBeCloseTo(height + Number(shrunk) * ahead, 9);
    }
  });

  it("compares the crews by the difference of their changes", () => {
    const [heron, otter] = [changes("Heron"), changes("Otter")];
    expect(number("Crews compared", "F11")).toBeCloseTo(mean(heron), 9);
    expect(number("Crews compared", "G12")).toBeCloseTo(sd(otter), 9);
    expect(number("Crews compared", "J21")).toBeCloseTo(mean(heron) - mean(otter), 9);
    expect(number("Crews compared", "F27")).toBe(heron.filter((change) => change > 2.5).length);
    // Heron's changes spread less than Otter's, so nothing speaks for an extra spread in Heron.
    expect(variance(heron)).toBeLessThan(variance(otter));
    expect(number("Crews compared", "J31")).toBeGreaterThan(0.5);
    // The trap that the sheet is there for: one small p, one large, and no difference shown.
    expect(number("Crews compared", "J14")).toBeLessThan(0.05);
    expect(number("Crews compared", "J20")).toBeGreaterThan(0.05);
    expect(number("Crews compared", "J28")).toBeGreaterThan(0.05);
    // The answer stands first, measure by measure.
    expect(String(book.read("Crews compared", "B3")).split("\n")).toEqual([
      expect.stringMatching(/^Squat: no difference .* does not show/),
      expect.stringMatching(/^Bench pull: .* Heron ended higher/),
      expect.stringMatching(/^Power: no difference .* does not show/),
    ]);
  });

  it("prints the same differences in the table of all measures", () => {
    const table = range("Test day", "B31:P33");
    expect(table.map(([measure]) => measure)).toEqual(["squat, kg", "bench pull, kg", "power, W"]);
    ["J", "K", "L"].forEach((letter, row) => {
      expect(table[row]?.[9]).toBeCloseTo(number("Crews compared", `${letter}23`), 9);
      expect(table[row]?.[12]).toBeCloseTo(number("Crews compared", `${letter}28`), 9);
    });
    const [squat, benchPull] = table.map((row) => ({ p: Number(row[12]), adjusted: row[13] }));
    expect(benchPull?.adjusted).toBeCloseTo(3 * Number(benchPull?.p), 9);
    expect(squat?.adjusted).toBeCloseTo(2 * Number(squat?.p), 9);
  });

  it("deals the lifters into groups of a size, within each sex", () => {
    const dealt = range("Test day", "D7:T26").map((row) => [row[0], row.at(-1)]);
    for (const sex of ["w", "m"]) {
      const sizeOf = (group: string) =>
        dealt.filter((row) => row[0] === sex && row[1] === group).length;
      const [a, b] = [sizeOf("A"), sizeOf("B")];
      expect(a + b).toBeGreaterThan(0);
      expect(Math.abs(a - b)).toBeLessThanOrEqual(1);
    }
  });
});

describe("the studies", () => {
  const effects = () => column("Studies", "J7:J11") as number[];
  const errors = () => column("Studies", "K7:K11") as number[];
  const groupOf = (address: string) =>
    only(range("Studies", address)) as [mean: number, sd: number, n: number];

  it("become effects from what was printed", () => {
    const [[meanA, sdA, nA], [meanB, sdB, nB]] = [groupOf("D7:F7"), groupOf("G7:I7")];
    const df = nA + nB - 2;
    const pooled = Math.sqrt(((nA - 1) * sdA ** 2 + (nB - 1) * sdB ** 2) / df);
    // Hedges' correction by its usual approximation, which is right to four digits here.
    const g = ((meanA - meanB) / pooled) * (1 - 3 / (4 * df - 1));
    expect(effects()[0]).toBeCloseTo(g, 4);
    expect(errors()[0]).toBeCloseTo(Math.sqrt(1 / nA + 1 / nB + g ** 2 / (2 * (nA + nB))), 4);
    // An interval printed as ± 1.96 standard errors.
    expect(errors()[4]).toBeCloseTo((0.18 + 0.42) / 2 / 1.959964, 6);
    // Student's t at 0.975 with 30 degrees of freedom, from any table.
    expect(number("Studies", "F16")).toBeCloseTo(
      ((147.5 - 132.9) / 2 / 2.042272) * Math.sqrt(31),
      4,
    );
  });

  it("are pooled by weight", () => {
    const weights = errors().map((error) => 1 / error ** 2);
    const pool = (w: readonly number[]) =>
      sum(effects().map((effect, i) => effect * elementAt(w, i))) / sum(w);
    const fixed = pool(weights);
    const q = sum(effects().map((effect, i) => elementAt(weights, i) * (effect - fixed) ** 2));
    const c = sum(weights) - sum(weights.map((w) => w ** 2)) / sum(weights);
    expect(number("Studies", "E29")).toBeCloseTo(fixed, 9);
    expect(number("Studies", "C38")).toBeCloseTo(q, 9);
    expect(number("Studies", "D36")).toBeCloseTo(Math.max(0, (q - 4) / c), 9);
    const between = number("Studies", "C36");
    const random = errors().map((error) => 1 / (error ** 2 + between));
    expect(number("Studies", "C29")).toBeCloseTo(pool(random), 9);
  });

  it("fall on a line over the close sets that were done", () => {
    const doses = column("Studies", "C7:C11") as number[];
    const between = number("Studies", "I36") ** 2;
    const studies = effects().map((effect, i) => ({
      effect,
      dose: elementAt(doses, i),
      weight: 1 / (elementAt(errors(), i) ** 2 + between),
    }));
    const total = sum(studies.map(({ weight }) => weight));
    const x = sum(studies.map(({ dose, weight }) => dose * weight)) / total;
    const y = sum(studies.map(({ effect, weight }) => effect * weight)) / total;
    const slope =
      sum(studies.map(({ dose, effect, weight }) => weight * (dose - x) * (effect - y))) /
      sum(studies.map(({ dose, weight }) => weight * (dose - x) ** 2));
    expect(number("Studies", "I30")).toBeCloseTo(slope, 9);
    expect(number("Studies", "L29")).toBeCloseTo(y + slope * (6 - x), 9);
  });

  it("end in a decision that fits its chances", () => {
    const [above, below] = [number("Studies", "Q29"), number("Studies", "Q30")];
    const reading =
      above >= 0.8 && below <= 0.05 ? "change" : above <= 0.2 ? "keep" : "test it first";
    expect(book.read("Studies", "B3")).toContain(`For this squad: ${reading}. Expected`);
  });
});
