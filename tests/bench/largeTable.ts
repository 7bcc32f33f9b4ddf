/**
 * `npx tsx tests/bench/largeTable.ts [rows]`: a log of so many sets as Parquet, summarised by week and lifter on the
 * command line: the time, the most memory, and whether the sums are those of the database itself.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { DuckDBInstance } from "@duckdb/node-api";
import { DIST } from "../../src/tools/paths";

const rows = Number(process.argv[2] ?? 10_000_000);
const folder = mkdtempSync(join(tmpdir(), "spare-large-"));
try {
  const log = join(folder, "log.parquet");
  const instance = await DuckDBInstance.create();
  const connection = await instance.connect();
  // 40 lifters, a set each in turn, over 104 weeks; every seventh set has no called reserve.
  await connection.run(`COPY (
    SELECT 'rower ' || (i % 40) AS lifter, 1 + (i * 104) // ${rows} AS week, 60 + (i % 57) * 2.5 AS load,
      1 + i % 8 AS reps, CASE WHEN i % 7 = 0 THEN NULL ELSE i % 5 END AS reserve
    FROM range(${rows}) AS sets(i)) TO '${log}' (FORMAT parquet)`);
  const output = join(folder, "summary.csv");
  const formula = 'SPARE.LOGSUMMARY(HSTACK([lifter],[week]),[load],[reps],[reserve]&"")';
  const args = ["spare", "table", log, "--formula", formula, "-o", output];
  const program = `
    process.on("exit", () => process.stderr.write("peak " + process.resourceUsage().maxRSS));
    await import(${JSON.stringify(pathToFileURL(join(DIST, "cli.js")).href)});`;
  const start = performance.now();
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ["--input-type=module", "-e", program, "--", ...args],
    { encoding: "utf8" },
  );
  const seconds = (performance.now() - start) / 1000;
  const peak = Number(/peak (\d+)$/.exec(stderr)?.[1]) / 1024;
  process.stdout.write(`${stdout}${stderr}\n`);
  if (status !== 0) throw new Error(`ended with ${status}`);
  const summed = await connection.run(`SELECT lifter, week, count(*)::DOUBLE, sum(reps)::DOUBLE,
    sum(reps * load)::DOUBLE, max(load)::DOUBLE FROM read_parquet('${log}') GROUP BY ALL`);
  const wanted = new Map(
    (await summed.getRowsJS()).map(([lifter, week, ...sums]) => [
      `${lifter},${week}`,
      sums.map(Number),
    ]),
  );
  const lines = readFileSync(output, "utf8").trim().split("\n").slice(1);
  const wrong = lines.filter((line) => {
    const [lifter, week, sets, reps, volume, , , top] = line.split(",");
    const sums = wanted.get(`${lifter},${week}`);
    return JSON.stringify(sums) !== JSON.stringify([sets, reps, volume, top].map(Number));
  });
  console.table({
    rows,
    "file MB": Math.round(statSync(log).size / 2 ** 20),
    keys: lines.length,
    "keys wrong or missing": wrong.length + wanted.size - lines.length,
    seconds: Number(seconds.toFixed(1)),
    "peak MB": Math.round(peak),
  });
} finally {
  rmSync(folder, { recursive: true });
}
