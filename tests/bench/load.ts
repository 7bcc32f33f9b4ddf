import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import type { PageSession } from "../browser/pageSession";
import { buildBook, lookAt } from "../cli/support";

/** A log of so many sets by one lifter, all e1RMs from one formula beside it. */
export function logOf(rows: number): Uint8Array {
  const sets = Array.from({ length: rows }, (_, index) => {
    const numbers = [loadOf(index), 1 + (index % 8), index % 5];
    const cells = numbers.map((value) => `<c><v>${value}</v></c>`).join("");
    const [load, reps, reserve] = ["A", "B", "C"].map((column) => `${column}1:${column}${rows}`);
    const all = `_xldudf_SPARE_E1RM(${load},${reps},${reserve})`;
    const formula = `<c cm="1"><f t="array" ref="D1:D${rows}">${all}</f></c>`;
    return `<row r="${index + 1}">${cells}${index === 0 ? formula : ""}</row>`;
  });
  return buildBook({ sheets: { Log: sets.join("") } });
}

const loadOf = (index: number) => 80 + (index % 60) * 2.5;

/** What stands in column D for the set of a row, by Epley (1985); a single to failure is the load itself. */
export function expectedAt(index: number, load = loadOf(index)): number {
  const t = 1 + (index % 8) + (index % 5);
  return t === 1 ? load : load * (1 + t / 30);
}

/** What an open log took, in milliseconds. */
export interface PageLoad {
  readonly opened: number;
  /** From typing a load until its e1RM is there: the middle one, and the slowest. */
  readonly edit: { readonly median: number; readonly worst: number };
}

/** Opens a log of so many rows in the page and changes loads all over it, one after the other. */
export async function loadPage(
  { page }: PageSession,
  rows: number,
  edits: number,
): Promise<PageLoad> {
  const buffer = Buffer.from(logOf(rows));
  const mimeType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
  const opened = await timed(async () => {
    const choosing = page.waitForEvent("filechooser");
    await page.getByRole("button", { name: "Open", exact: true }).click();
    await (await choosing).setFiles({ name: "season.xlsx", mimeType, buffer });
    await computed(page, rows - 1, expectedAt(rows - 1));
  });
  const took: number[] = [];
  for (let edit = 0; edit < edits; edit++) {
    const index = (edit * 7919) % rows;
    const load = 200 + edit;
    took.push(
      await timed(async () => {
        await page.evaluate(
          ([address, value]) => {
            const sheet = window.spare!.api.getActiveWorkbook()!.getSheetByName("Log")!;
            sheet.getRange(address).setValue(value);
          },
          [`A${index + 1}`, load] as const,
        );
        await computed(page, index, expectedAt(index, load));
      }),
    );
  }
  took.sort((one, other) => one - other);
  return { opened, edit: { median: took[took.length >> 1]!, worst: took.at(-1)! } };
}

/** Waits until the e1RM of a row is as it is to be. */
async function computed(page: PageSession["page"], index: number, wanted: number): Promise<void> {
  await page.waitForFunction(
    ([address, value]) => {
      if (!window.spare?.api.getActiveWorkbook()?.getSheetByName("Log")) return false;
      return Math.abs(Number(window.spare.readCell("Log", address)) - value) < 1e-6;
    },
    [`D${index + 1}`, wanted] as const,
    { polling: 20, timeout: 300_000 },
  );
}

/** What workbooks that are calculated at once took. */
export interface CommandLineLoad {
  readonly seconds: number;
  /** The most memory that one of the processes had. */
  readonly megabytes: number;
  /** How many of them were not calculated right. */
  readonly wrong: number;
}

/** Calculates so many workbooks of so many rows at once, each by a command line of its own. */
export async function loadCommandLine(
  program: string,
  books: number,
  rows: number,
): Promise<CommandLineLoad> {
  const folder = mkdtempSync(join(tmpdir(), "spare-load-"));
  try {
    const bytes = logOf(rows);
    const paths = Array.from({ length: books }, (_, index) => join(folder, `${index}.xlsx`));
    for (const path of paths) writeFileSync(path, bytes);
    let peaks: number[] = [];
    const milliseconds = await timed(async () => {
      peaks = await Promise.all(paths.map((path) => calc(program, path)));
    });
    const wrong = paths.filter((path) => !isRight(new Uint8Array(readFileSync(path)), rows));
    return {
      seconds: milliseconds / 1000,
      megabytes: Math.max(...peaks),
      wrong: wrong.length,
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Runs `spare calc --in-place`, and says how many megabytes it had at most. */
function calc(program: string, path: string): Promise<number> {
  const told = `process.on("exit", () => process.stderr.write("peak " + process.resourceUsage().maxRSS));`;
  const args = ["--import", `data:text/javascript,${encodeURIComponent(told)}`, program];
  const child = spawn(process.execPath, [...args, "calc", path, "--in-place"]);
  let said = "";
  child.stderr.on("data", (data: Buffer) => (said += data.toString()));
  child.stdout.resume();
  return new Promise((resolve, reject) => {
    child.on("close", () => {
      const [, kilobytes] = /peak (\d+)$/.exec(said) ?? [];
      if (kilobytes === undefined) reject(new Error(said));
      else resolve(Math.round(Number(kilobytes) / 1024));
    });
  });
}

function isRight(bytes: Uint8Array, rows: number): boolean {
  const { value } = lookAt(bytes);
  return [0, rows >> 1, rows - 1].every(
    (index) => Math.abs(Number(value("Log", `D${index + 1}`)) - expectedAt(index)) < 1e-6,
  );
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}
