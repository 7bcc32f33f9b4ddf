import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { chromium, type Browser, type CDPSession, type Page } from "playwright-core";
import { buildIfStale } from "../../src/tools/dist";
import { DIST } from "../../src/tools/paths";
import { serve } from "../../src/tools/serve";
import { executablePath, launchOptions } from "../browser/chromium";
import { filledDown } from "./commandLine";

/** Each is taken so often, and the least is told: what else the machine does only ever adds. */
const VISITS = 3;
const KEYS = 5;
const FILE_ROWS = 10_000;

/** Seconds somebody waits, and those that the page's main thread was computing in that time. */
interface Wait {
  readonly seconds: number;
  readonly computing: number;
}

/** How long somebody waits for the page on localhost, beside the longest that they should. */
export async function benchPage(): Promise<void> {
  if (executablePath === undefined) {
    console.log("\nThe page: no Chromium was found");
    return;
  }
  await buildIfStale(["workbook", "pane", "excel"]);
  const folder = mkdtempSync(join(tmpdir(), "page-bench-"));
  const file = join(folder, "season.xlsx");
  writeFileSync(file, filledDown(FILE_ROWS));
  const serving = await serve(DIST, 3250);
  await serving.compressAhead(["workbook.js"]);
  const browser = await chromium.launch(launchOptions);
  try {
    const visits = [];
    for (let visit = 0; visit < VISITS; visit++) {
      visits.push(await twoVisits(browser, serving.address));
    }
    const { page, devtools } = await newPage(browser);
    await page.goto(serving.address);
    await until(page, `typeof ${contentOf("Start", "C11")} === "number"`);
    const demo = await typing(page, devtools, { sheet: "Start", typedInto: "C7", read: "C11" });
    const opening = await opened(page, devtools, file);
    const own = await typing(page, devtools, { sheet: "Log", typedInto: "A5000", read: "D5000" });
    const shown = `${FILE_ROWS} filled-down rows`;
    console.log("\nThe page on localhost, at best");
    console.table({
      "first visit, until a typed digit shows": row(least(visits.map(({ first }) => first)), 3),
      "second visit, the same": row(least(visits.map(({ second }) => second)), 1.5),
      "demo: a digit shows": row(demo.digit, 0.1),
      "demo: a committed cell, and what rests on it": row(demo.commit, 0.1),
      [`${shown} are open and computed`]: row(opening, 5),
      [`${shown}: a digit shows`]: row(own.digit, 0.3),
      [`${shown}: a committed cell, and what rests on it`]: row(own.commit, 0.3),
    });
  } finally {
    await browser.close();
    await serving.close();
    rmSync(folder, { recursive: true });
  }
}

const row = ({ seconds, computing }: Wait, atMost: number) => ({
  seconds: round(seconds),
  "main thread, CPU s": round(computing),
  "at most": atMost,
});
const round = (value: number) => Math.round(value * 100) / 100;
const least = (waits: readonly Wait[]): Wait => ({
  seconds: Math.min(...waits.map(({ seconds }) => seconds)),
  computing: Math.min(...waits.map(({ computing }) => computing)),
});

async function newPage(browser: Browser): Promise<{ page: Page; devtools: CDPSession }> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await context.addInitScript("window.showOpenFilePicker = undefined");
  const page = await context.newPage();
  const devtools = await context.newCDPSession(page);
  await devtools.send("Performance.enable", { timeDomain: "threadTicks" });
  return { page, devtools };
}

/** A first visit and the next one, each until a digit is seen in the selected cell. */
async function twoVisits(
  browser: Browser,
  address: string,
): Promise<{ first: Wait; second: Wait }> {
  const { page, devtools } = await newPage(browser);
  const visit = () =>
    wait(devtools, async () => {
      await page.goto(address);
      await until(page, "window.spare !== undefined");
      // What is typed before the page listens is lost, so it is typed until it shows.
      await until(page, isEditing, () => page.keyboard.press("7"));
    });
  const first = await visit();
  await page.evaluate("navigator.serviceWorker.ready.then(() => undefined)");
  const second = await visit();
  await page.context().close();
  return { first, second };
}

const isEditing = "window.spare.api.getActiveWorkbook().isCellEditing()";

interface Cells {
  readonly sheet: string;
  readonly typedInto: string;
  /** A cell that rests on that one. */
  readonly read: string;
}

/** What it takes until a digit shows, and until a committed cell and what rests on it do. */
async function typing(
  page: Page,
  devtools: CDPSession,
  { sheet, typedInto, read }: Cells,
): Promise<{ digit: Wait; commit: Wait }> {
  const digits: Wait[] = [];
  const commits: Wait[] = [];
  const box = page.locator("[data-u-comp=defined-name] input");
  for (let turn = 0; turn < KEYS; turn++) {
    await box.click();
    await box.fill(typedInto);
    await box.press("Enter");
    await atRest(page);
    digits.push(await shownAfter(page, devtools, "9", isEditing));
    // Far enough from the one before to be another load on the bar as well.
    await page.keyboard.type(`${turn}0`);
    await atRest(page);
    const before = await page.evaluate(`window.before = ${contentOf(sheet, read)}`);
    if (typeof before !== "number") throw new Error(`${sheet}!${read} is not computed`);
    const changed = `${contentOf(sheet, read)} !== window.before`;
    commits.push(await shownAfter(page, devtools, "Enter", changed));
  }
  return { digit: least(digits), commit: least(commits) };
}

const contentOf = (sheet: string, address: string) =>
  `window.spare?.readCell(${JSON.stringify(sheet)}, ${JSON.stringify(address)})`;

/** From a key's press until an expression holds in the page and the frame after that is drawn. */
async function shownAfter(
  page: Page,
  devtools: CDPSession,
  key: string,
  expression: string,
): Promise<Wait> {
  await page.evaluate(`window.shown = new Promise((resolve, reject) => {
    addEventListener("keydown", ({ timeStamp }) => {
      const look = () => {
        if (performance.now() > timeStamp + 60_000) reject(new Error(${JSON.stringify(`${key}: never held: ${expression}`)}));
        else if (!(${expression})) setTimeout(look, 1);
        else requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - timeStamp)));
      };
      setTimeout(look);
    }, { capture: true, once: true });
  }); undefined`);
  let inPage = 0;
  const { computing } = await wait(devtools, async () => {
    await page.keyboard.press(key);
    inPage = await page.evaluate("window.shown");
  });
  return { seconds: inPage / 1000, computing };
}

/** Waits until an expression holds in the page, whose own policy lets nothing else evaluate it there. */
async function until(
  page: Page,
  expression: string,
  between: () => Promise<void> = () => page.waitForTimeout(10),
): Promise<void> {
  const patience = performance.now() + 60_000;
  while (!(await page.evaluate(expression))) {
    if (performance.now() > patience) throw new Error(`never held: ${expression}`);
    await between();
  }
}

/** Lets what an earlier step set off come to its end. */
const atRest = (page: Page) => page.waitForTimeout(500);

async function opened(page: Page, devtools: CDPSession, file: string): Promise<Wait> {
  const choosing = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Open", exact: true }).click();
  const chooser = await choosing;
  return wait(devtools, async () => {
    await chooser.setFiles(file);
    await until(
      page,
      `document.querySelector("#message").textContent.startsWith("season.xlsx is open")
        && typeof ${contentOf("Log", `D${FILE_ROWS}`)} === "number"`,
    );
  });
}

async function wait(devtools: CDPSession, work: () => Promise<void>): Promise<Wait> {
  const computing = async () => {
    const { metrics } = await devtools.send("Performance.getMetrics");
    return metrics.find(({ name }) => name === "TaskDuration")?.value ?? 0;
  };
  const before = await computing();
  const start = performance.now();
  await work();
  const seconds = (performance.now() - start) / 1000;
  // A page that was opened anew counts from nothing.
  const after = await computing();
  return { seconds, computing: after < before ? after : after - before };
}
