import { performance } from "node:perf_hooks";
import { chromium, type Page } from "playwright-core";
import { buildIfStale } from "../../src/tools/dist";
import { DIST } from "../../src/tools/paths";
import { serve } from "../../src/tools/serve";
import { executablePath, launchOptions } from "../browser/chromium";

/** Until the demo can be typed into, on the first visit and on the next, and how long a typed cell takes. */
export async function benchPage(): Promise<void> {
  if (executablePath === undefined) {
    console.log("\nThe page: no Chromium was found");
    return;
  }
  await buildIfStale(["workbook", "pane", "excel"]);
  const serving = await serve(DIST, 3250);
  const browser = await chromium.launch(launchOptions);
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  const rows = [
    { what: "first visit", ms: await timed(() => visit(page, serving.address)) },
    { what: "second visit", ms: await timed(() => visit(page, serving.address)) },
    { what: "a committed cell, until what follows is computed", ms: await commit(page) },
  ];
  console.log("\nThe page on localhost, until the demo can be typed into");
  console.table(rows.map(({ what, ms }) => ({ what, seconds: (ms / 1000).toFixed(2) })));
  await browser.close();
  await serving.close();
}

async function visit(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.waitForFunction(() => window.spare !== undefined, null, { polling: 20 });
}

/** Changes an input of the demo's first sheet and waits for the load that rests on it. */
async function commit(page: Page): Promise<number> {
  const computed = (load: number) =>
    page.waitForFunction((wanted) => window.spare!.readCell("Start", "C11") === wanted, load, {
      polling: 20,
    });
  await computed(112.5);
  const box = page.locator("[data-u-comp=defined-name] input");
  await box.click();
  await box.fill("C7");
  await box.press("Enter");
  await page.keyboard.type("160");
  return timed(async () => {
    await page.keyboard.press("Enter");
    // 160 kg for 5 with 2 in reserve: 160 / (1 + 7/30) = 129.7, in steps of 2.5 kg 130.
    await computed(130);
  });
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}
