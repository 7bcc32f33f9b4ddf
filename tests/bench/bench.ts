/** `npm run bench`: what is fast and by how much, each beside an alternative in the same run. */
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { createContext, Script } from "node:vm";
import { Bench } from "tinybench";
import { buildIfStale } from "../../src/tools/dist";
import { DIST } from "../../src/tools/paths";
import { equations, type Equation } from "../../src/core/strength/equations";
import { e1rm } from "../../src/core/strength/oneRepMax";
import { implementations } from "../../src/functions/implementations";
import { benchCardPaint } from "./cardPaint";
import { benchCommandLine } from "./commandLine";
import { benchEngineColumns } from "./engineColumns";
import { benchFind } from "./find";
import { benchLoad } from "./benchLoad";
import { benchLog } from "./log";
import { median } from "./median";
import { benchPage } from "./page";
import { benchRandomBooks, everyBook, freshSeed } from "./randomBooks";
import { benchTrend } from "./trend";

const ROWS = 10_000;

/** The core's arithmetic beside the same formula written out by hand. */
async function benchCore(): Promise<void> {
  const bench = new Bench({ time: 500 });
  const equation: Equation = equations.epley;
  let t = 0;
  bench
    .add("core e1rm, Epley", () => {
      t = (t % 28) + 2;
      e1rm(100, t, equation);
    })
    .add("written out: load * (1 + t / 30)", () => {
      t = (t % 28) + 2;
      return 100 * (1 + t / 30);
    });
  await bench.run();
  console.log("\nOne estimate in the core");
  console.table(bench.table());
}

/** One call over a column beside a call a cell, as a sheet would make them. */
async function benchColumn(): Promise<void> {
  const loads = Array.from({ length: ROWS }, (_row, i) => [60 + (i % 80)]);
  const reps = Array.from({ length: ROWS }, (_row, i) => [1 + (i % 10)]);
  const reserves = Array.from({ length: ROWS }, (_row, i) => [i % 5 === 4 ? "" : String(i % 4)]);
  const bench = new Bench({ time: 1000 });
  bench
    .add(`E1RM over ${ROWS} rows in one call`, () => {
      implementations.E1RM(loads, reps, reserves);
    })
    .add(`E1RM cell by cell, ${ROWS} calls`, () => {
      for (let i = 0; i < ROWS; i++) implementations.E1RM([loads[i]], [reps[i]], [reserves[i]]);
    });
  await bench.run();
  console.log("\nA column (without what the host adds to each call)");
  console.table(bench.table());
}

/** The functions' bundle: what it weighs and how long it takes to load, beside an empty script. */
function benchBundle(): void {
  const file = join(DIST, "functions.js");
  const source = readFileSync(file, "utf8");
  const load = (script: string) => {
    const CustomFunctions = { associate: () => undefined };
    const start = performance.now();
    new Script(script).runInContext(createContext({ CustomFunctions }));
    return performance.now() - start;
  };
  const usual = (script: string) => median(Array.from({ length: 15 }, () => load(script)));
  console.log("\nThe bundle for Excel");
  console.table([
    {
      script: "functions.js",
      KiB: round(statSync(file).size / 1024),
      "load ms": round(usual(source)),
    },
    { script: "an empty script", KiB: 0, "load ms": round(usual("")) },
  ]);
}

const round = (value: number) => Math.round(value * 10) / 10;

await buildIfStale(["excel", "cli"]);
await benchCore();
await benchColumn();
benchFind();
benchBundle();
benchLog();
benchTrend();
await benchPage();
await benchEngineColumns();
benchCommandLine();
await benchCardPaint();
await benchLoad();
await benchRandomBooks(freshSeed(), everyBook());
