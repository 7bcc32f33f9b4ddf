import { readFileSync, writeFileSync } from "node:fs";
import { format, resolveConfig } from "prettier";
import { families } from "./registry";
import { fullRuns, measure, nameOf, outside, type Measured, type Scenario } from "./scenario";
import { percent, withTable } from "./tables";

/**
 * How often the intervals hold, and how often the readings sound a false alarm, over thousands of invented
 * logs, squads and studies whose truth is known. Writes the tables of docs/accuracy.md anew.
 *
 * `npm run coverage` measures everything, `npm run coverage POOLSTUDIES MDC` only these functions.
 */
const DOCUMENT = new URL("../../../docs/accuracy.md", import.meta.url);

const wanted = process.argv.slice(2).map((name) => name.toUpperCase());
const scenarios = families.flatMap((family) => family.scenarios);
const unknown = wanted.filter((name) => !scenarios.some((scenario) => scenario.function === name));
if (unknown.length > 0) throw new Error(`no scenario measures ${unknown.join(", ")}`);

const measured = new Map<Scenario, Measured>();
for (const scenario of scenarios) {
  if (wanted.length > 0 && !wanted.includes(scenario.function)) continue;
  const result = measure(scenario, fullRuns(scenario));
  measured.set(scenario, result);
  console.log(`${percent(result.share).padStart(6)} (${scenario.promised})  ${nameOf(scenario)}`);
  if (outside(scenario, result)) {
    console.error(`        expected from ${scenario.band.map(percent).join(" to ")}`);
    process.exitCode = 1;
  }
}

const before = readFileSync(DOCUMENT, "utf8");
const after = families.reduce(
  (text, family) => withTable(text, family, (scenario) => measured.get(scenario)),
  before,
);
const options = await resolveConfig(DOCUMENT);
writeFileSync(DOCUMENT, await format(after, { ...options, parser: "markdown" }));
