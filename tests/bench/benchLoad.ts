import { join } from "node:path";
import { chromium } from "playwright-core";
import { buildIfStale } from "../../src/tools/dist";
import { DIST } from "../../src/tools/paths";
import { serve } from "../../src/tools/serve";
import { executablePath, launchOptions } from "../browser/chromium";
import { openPage } from "../browser/pageSession";
import { loadCommandLine, loadPage } from "./load";

/** A season in the page, changed all over, and many workbooks at once on the command line. */
export async function benchLoad(): Promise<void> {
  await buildIfStale(["cli", "workbook", "pane", "excel"]);
  console.log("\nWorkbooks of 2,000 sets at once, each by a command line of its own");
  const program = join(DIST, "cli.js");
  const loads = [];
  for (const books of [1, 10, 50]) {
    const { seconds, ...load } = await loadCommandLine(program, books, 2000);
    loads.push({ books, seconds: seconds.toFixed(1), ...load });
  }
  console.table(loads);

  if (executablePath === undefined) return console.log("\nThe page: no Chromium was found");
  const serving = await serve(DIST, 3260);
  const browser = await chromium.launch(launchOptions);
  const session = await openPage(browser, serving.address);
  const { opened, edit } = await loadPage(session, 50_000, 200);
  const inSeconds = (milliseconds: number) => (milliseconds / 1000).toFixed(2);
  console.log("\nThe page with 50,000 logged sets and 200 changed loads, until the e1RM is there");
  console.table([
    { what: "opened and computed", seconds: inSeconds(opened) },
    { what: "a changed load, the middle one", seconds: inSeconds(edit.median) },
    { what: "a changed load, the slowest", seconds: inSeconds(edit.worst) },
  ]);
  await browser.close();
  await serving.close();
  return undefined;
}
