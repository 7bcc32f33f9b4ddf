import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { randomStream } from "../../random";
import { implementations } from "../../../src/functions/implementations";
import type { CellContent } from "../../../src/engine/inspect";
import type { HeadlessWorkbook } from "../../../src/engine/headless";
import { openContents } from "../../../src/engine/headless";
import { lambdas, lambdaText, PREFIX } from "../../../src/recalculate/copies/lambdas";
import { rewriteFormula } from "../../../src/recalculate/copies/rewriteFormula";
import { cellAddress, columnLetters } from "../../../src/formula/address";
import { between, pick, type Content } from "./draw";

/*
 * The page can open a copy: some of its formulas against the functions they stand for, side by side in the
 * engine. againstCore.test.ts compares all of them over many calls, without the engine.
 */

type Draw = (random: () => number) => Content;

/** What a cell of a training log can hold that is no number. */
const odd = pick(
  null,
  0,
  "",
  " ",
  "DNS",
  "–",
  "80kg",
  "2,5",
  "7.5",
  " 3 ",
  "1,250",
  -4,
  true,
  45_000,
);
const mostly =
  (usual: Draw): Draw =>
  (random) =>
    random() < 0.8 ? usual(random) : odd(random);

const load = mostly(between(20, 260, 0.25));
const reps = mostly(between(1, 18, 1));
const reserve = mostly(between(0, 6));
const increment = mostly(pick(0, 1, 1.25, 2.5, 5));
const equation: Draw = (random) =>
  random() < 0.9
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
    : pick("eply", -3, 0, true, "")(random);

const draws: Readonly<Record<string, readonly Draw[]>> = {
  E1RM: [load, reps, reserve, equation],
  PERCENT1RM: [reps, reserve, equation],
  REPSAT: [load, mostly(between(100, 260)), reserve, equation],
  RELATIVESTRENGTH: [
    load,
    mostly(between(45, 120)),
    pick(1, 2 / 3, 0.5, null, 0, -1, "0,5", "DNS"),
  ],
  LOADFOR: [load, reps, reserve, increment, equation],
  NEXTLOAD: [load, reps, reserve, reps, reserve, increment, equation],
  ROUNDLOAD: [load, increment, pick("nearest", "down", "UP", null, 0, "sideways")],
  RPETORIR: [mostly(between(4, 11))],
  RIRTORPE: [reserve],
  RESERVETAPER: [
    mostly(between(1, 12, 1)),
    reserve,
    reserve,
    mostly(between(1, 12, 1)),
    mostly(pick(0, 0.5, 1)),
  ],
  MDC: [
    mostly(between(0.5, 9)),
    mostly(pick(0.9, 0.95, 0.5, 95)),
    pick(1, 5, 24, null, 0, -2, "8", "DNS"),
  ],
};

const rows = 6;
const columns = 7;

const calls = Object.entries(draws).map(([id, argumentDraws], index) => {
  const random = randomStream(100 + index);
  const cells = Array.from({ length: rows }, () => argumentDraws.map((draw) => draw(random)));
  return { id, cells, sheet: `Sheet ${id}` };
});

function formulaIn(id: string, row: number, count: number): string {
  const cells = Array.from({ length: count }, (_, column) => cellAddress(row, column));
  return `SPARE.${id}(${cells.join(",")})`;
}

const columnOf = (count: number) =>
  Array.from({ length: count }, (_, column) => {
    const letters = columnLetters(column);
    return `${letters}1:${letters}${rows}`;
  }).join(",");

/** Whole formulas, among them calls that leave arguments out and calls inside calls. */
const formulas: readonly string[] = [
  "SPARE.E1RM(100,5)",
  "SPARE.E1RM(100,5,,25)",
  "SPARE.LOADFOR(140,5,2,2.5)",
  "SPARE.LOADFOR(SPARE.E1RM(100,5,2),3,1,2.5)",
  "SPARE.NEXTLOAD(100,8,2,5,1,2.5)",
  "ROUND(SPARE.E1RM(100,SPARE.REPSAT(80,100)),3)+1",
  "SPARE.ROUNDLOAD(98.6,2.5)",
  "SPARE.ROUNDLOAD(157.5*22/36,2.5)",
  'SPARE.ROUNDLOAD(100,2.5,"down")',
  "SPARE.MDC(2.1)",
  "SPARE.MDC(2.1,,9)",
  "SPARE.RELATIVESTRENGTH(180,90)",
  "SPARE.RELATIVESTRENGTH(180,90,2/3)",
  "SPARE.REPSAT(101,100)",
  "SPARE.REPSAT(20,100)",
  "SUM(SPARE.RESERVETAPER(6,3,0.5))",
  "SUM(SPARE.RESERVETAPER(8,4,0,,0.5))",
  "SPARE.RESERVETAPER(4,3,0,2)",
  "SPARE.RESERVETAPER(1,3,0,1)",
  'SPARE.CHANGESCORE(100,105,2,,,,"p")',
  'SPARE.EQUIVALENCE(1,2,9,3,,"reading")',
  'SPARE.FITCURVE({120;110;100;92.5;80},{1;3;5;8;12},,,"one-rep max high")',
  'SPARE.FITCURVE({120;110;100;92.5;80},{1;3;5;8;12},{0;1;0;2;1},0.9,"constant low")',
  'SPARE.RESERVECHECK({5;6;4;5;6;5},{2;3;3;2;2;4},{8;9;9;9;8;10},,,,"agree high")',
  'SPARE.RESERVECHECK({5;6;4;5;6;5},{2;3;3;2;2;4},{8;9;9;9;8;10},{"Ada";"Ada";"Bo";"Bo";"Cy";"Cy"},,,"sd")',
  'SPARE.RESERVECHECK({5;6;4;5;6;5},{2;3;3;2;2;4},{8;9;9;9;8;10},{"Ada";"Ada";"Bo";"Bo";"Cy";"Cy"},,0.9,"p")',
  "SUM(SPARE.RESERVECHECK({5;6;4;5;6;5},{2;3;3;2;2;4},{8;9;9;9;8;10},,{1;1;2;2;2;3}))",
  'SPARE.RELIABILITY({146,140;148,152;170,152;90,99;157,145},,"icc agreement high")',
  "SUM(SPARE.RELIABILITY({146,140;148,152;170,152;90,99;157,145}))",
  'SPARE.GROUPCHANGE({"East";"West";"east";"West";"East";"West";"East"},{31;33;30;35;32;34;29},{34;33;35;36;35;35;33},"west",0.9,"reading")',
  'SUM(SPARE.GROUPCHANGE({"East";"West";"east";"West";"East";"West";"East"},{31;33;30;35;32;34;29},{34;33;35;36;35;35;33}))',
  'SUM(SPARE.TESTTABLE({"crew";"East";"West";"east";"West";"East";"West";"East"},{"jump","row";31,7;33,8;30,7.5;35,9;32,8;34,8.5;29,6},{"jump","row";34,8;33,8;35,9;36,9.5;35,8.5;35,8;33,7}))',
];

/** Those whose numbers hang on a quantile, of which a spreadsheet has fewer digits. */
const QUANTILE = /MDC|CHANGESCORE|FITCURVE|RESERVECHECK|RELIABILITY|GROUPCHANGE|TESTTABLE/;

const copyOf = (formula: string) => `=${rewriteFormula(formula)!.text}`;

const sheets = (): Record<string, Content[][]> => {
  const ofCalls = calls.map(({ id, cells, sheet }): [string, Content[][]] => {
    const lines = cells.map((values, row) => {
      const formula = formulaIn(id, row, values.length);
      const gap = Array<Content>(columns - values.length).fill(null);
      const lifted = row === 0 ? [copyOf(`SPARE.${id}(${columnOf(values.length)})`)] : [];
      return [...values, ...gap, `=${formula}`, copyOf(formula), ...lifted];
    });
    return [sheet, lines];
  });
  const pairs = formulas.map((formula) => [`=${formula}`, copyOf(formula)]);
  return { ...Object.fromEntries(ofCalls), Pairs: pairs };
};

let book: HeadlessWorkbook;
beforeAll(async () => {
  const functions = Object.keys(implementations).map((id) => ({ id, parameters: [] }));
  const names = [...lambdas.values()].map((lambda) => [
    PREFIX + lambda.name,
    `=${lambdaText(lambda)}`,
  ]);
  book = await openContents(sheets(), Object.fromEntries(names), { functions }, implementations);
});
afterAll(() => book.close());

/** A t quantile is the spreadsheet's own, which is good to 9 digits; all else is to 12. */
function expectSame(copy: CellContent, own: CellContent, where: string, digits = 1e-12): void {
  if (typeof own !== "number") {
    expect(copy, where).toBe(own);
    return;
  }
  expect(typeof copy, `${where}: ${String(copy)}`).toBe("number");
  expect(Math.abs(Number(copy) - own), where).toBeLessThanOrEqual(digits * Math.abs(own));
}

describe("a copy's function", () => {
  for (const { id, cells, sheet } of calls) {
    const digits = id === "MDC" ? 1e-8 : 1e-12;
    const at = (row: number, column: number) => book.read(sheet, cellAddress(row, column));
    const shown = (row: number) => `${id}(${JSON.stringify(cells[row])})`;

    it(`answers as ${id} does, whatever the cells hold`, () => {
      cells.forEach((_, row) => {
        expectSame(at(row, columns + 1), at(row, columns), shown(row), digits);
      });
    });

    it(`answers for whole ranges as ${id} does for each row`, () => {
      cells.forEach((_, row) => {
        expectSame(at(row, columns + 2), at(row, columns), shown(row), digits);
      });
    });
  }

  it("stands in formulas as the add-in's does, arguments left out and calls inside calls", () => {
    formulas.forEach((formula, row) => {
      const own = book.read("Pairs", cellAddress(row, 0));
      const copy = book.read("Pairs", cellAddress(row, 1));
      expect(own, formula).not.toBe("#NAME?");
      const digits = QUANTILE.test(formula) ? 1e-8 : 1e-12;
      expectSame(copy, own, formula, digits);
    });
  });
});

describe("rewriting a formula", () => {
  it("writes out what a call leaves out", () => {
    expect(rewriteFormula("_xldudf_SPARE_E1RM(A2,B2)")).toEqual({
      text: 'PORTABLE_E1RM(A2,B2,0,"epley")',
      calls: new Set(["E1RM"]),
    });
  });

  it("leaves text and other functions alone", () => {
    expect(rewriteFormula('"SPARE.E1RM("&SUM(A1,{1,2})&SPARE_RPETORIR(A1)')?.text).toBe(
      '"SPARE.E1RM("&SUM(A1,{1,2})&PORTABLE_RPETORIR(A1)',
    );
  });

  it("gives up where one function has no closed form, or a whole column is read", () => {
    expect(rewriteFormula("SPARE.E1RM(A1,B1)+SPARE.PLATES(100)")).toBeUndefined();
    expect(rewriteFormula("SPARE.E1RM(A:A,B:B)")).toBeUndefined();
    expect(rewriteFormula("SPARE.E1RM(A1)")).toBeUndefined();
  });
});
