/**
 * Lists where our engine and the recorded values differ: `npx tsx tests/engine/differential/report.ts [area]`.
 * With `--record`, LibreOffice is asked first for the values that are missing; with `--check`, for all that are its.
 */
import type { Case, Values } from "./cases";
import { agree, readCases, record, showValues } from "./cases";
import { computeHere, computeInLibreOffice } from "./compute";

const flags = process.argv.slice(2).filter((each) => each.startsWith("--"));
const areas = process.argv.slice(2).filter((each) => !each.startsWith("--"));
const say = (text: string) => process.stdout.write(`${text}\n`);

async function report(): Promise<void> {
  if (flags.includes("--record")) recordMissing();
  const all = readCases();
  const cases = all.filter(({ area }) => areas.length === 0 || areas.includes(area));
  if (flags.includes("--check")) checkRecorded(cases);
  const computed = await computeHere(all);
  let agreed = 0;
  for (const one of cases) {
    const { values, left } = computed.get(one)!;
    if (!left && one.expected && agree(values, one.expected)) agreed++;
    else say(`${place(one)}  expected ${show(one.expected)}  got ${left ?? show(values)}`);
  }
  say(`${agreed} of ${cases.length} formulas agree`);
}

function recordMissing(): void {
  const cases = readCases();
  const answers = computeInLibreOffice(cases);
  const missing = cases.filter(({ source, expected }) => source === "LibreOffice" && !expected);
  record(new Map(missing.map((one) => [one, answers.get(one)!])));
  say(`LibreOffice gave ${missing.length} values`);
}

function checkRecorded(cases: readonly Case[]): void {
  const answers = computeInLibreOffice(readCases());
  const keyed = new Map([...answers].map(([one, values]) => [place(one), values]));
  for (const one of cases) {
    const answer = keyed.get(place(one))!;
    if (one.source !== "LibreOffice" || (one.expected && agree(answer, one.expected))) continue;
    say(`${place(one)}  recorded ${show(one.expected)}  LibreOffice ${show(answer)}`);
  }
}

const place = ({ area, line, formula }: Case) => `${area}:${line} ${formula}`;
const show = (values: Values | undefined) => (values ? showValues(values) : "nothing");

await report();
