/**
 * Lists where our engine and the recorded values differ: `npx tsx tests/engine/differential/report.ts [area]`.
 * With `--record`, LibreOffice is asked first for the values that are missing; with `--check`, for all that are its.
 */
import type { Case, Values } from "./cases";
import { agree, readCases, record, showValues } from "./cases";
import { computeHere, isRight, summary, computeInLibreOffice } from "./compute";

const flags = process.argv.slice(2).filter((each) => each.startsWith("--"));
const areas = process.argv.slice(2).filter((each) => !each.startsWith("--"));
const say = (text: string) => process.stdout.write(`${text}\n`);

async function report(): Promise<void> {
  if (flags.includes("--record")) recordMissing();
  const all = readCases();
  const cases = all.filter(({ area }) => areas.length === 0 || areas.includes(area));
  if (flags.includes("--check")) checkRecorded(cases);
  const computed = await computeHere(all);
  for (const one of cases.filter((each) => !isRight(each, computed.get(each)!))) {
    const { values, left } = computed.get(one)!;
    const expected = one.isLeft ? "that it is left" : show(one.expected);
    say(`${place(one)}  expected ${expected}  got ${left ?? show(values)}`);
  }
  for (const one of cases.filter(({ isLeft }) => isLeft)) {
    say(`${place(one)}  is left: ${computed.get(one)!.left ?? "not at all"}`);
  }
  say(summary(cases, computed));
}

function recordMissing(): void {
  const cases = readCases();
  const answers = computeInLibreOffice(cases);
  const missing = cases.filter(
    ({ source, expected, isLeft }) => source === "LibreOffice" && !expected && !isLeft,
  );
  record(new Map(missing.map((one) => [one, answers.get(one)!])));
  say(`LibreOffice gave ${missing.length} values`);
}

function checkRecorded(cases: readonly Case[]): void {
  const answers = computeInLibreOffice(readCases());
  const keyed = new Map([...answers].map(([one, values]) => [place(one), values]));
  for (const one of cases) {
    const answer = keyed.get(place(one))!;
    if (one.source !== "LibreOffice" || one.isLeft || (one.expected && agree(answer, one.expected)))
      continue;
    say(`${place(one)}  recorded ${show(one.expected)}  LibreOffice ${show(answer)}`);
  }
}

const place = ({ area, line, formula }: Case) => `${area}:${line} ${formula}`;
const show = (values: Values | undefined) => (values ? showValues(values) : "nothing");

await report();
