/**
 * Takes the pictures of the page that the README shows: `npx tsx tests/browser/takePictures.ts`. Another
 * folder can be named.
 */
import { join } from "node:path";
import { chromium } from "playwright-core";
import { buildIfStale } from "../../src/tools/dist";
import { DIST, ROOT } from "../../src/tools/paths";
import { serve } from "../../src/tools/serve";
import { launchOptions } from "./chromium";

const folder = process.argv[2] ?? join(ROOT, "docs", "images");
await buildIfStale(["workbook", "pane", "excel"]);
const serving = await serve(DIST, 3400);
const browser = await chromium.launch(launchOptions);
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
page.setDefaultTimeout(120_000);
try {
  await page.goto(serving.address);
  const aside = page.locator("#pane");
  await aside.getByRole("tab", { name: "Find" }).waitFor();
  // The last sheet's last formula is computed when every other is.
  const trend = () => page.evaluate(`window.spare.readCell("Strength trend", "G8")`);
  while (typeof (await trend()) !== "number") await page.waitForTimeout(200);
  await page.waitForTimeout(3000);
  await page.screenshot({ path: join(folder, "workbook.png") });

  await page.evaluate(`{
    const workbook = window.spare.api.getActiveWorkbook();
    const sheet = workbook.getSheetByName("Strength trend");
    workbook.setActiveSheet(sheet);
    sheet.getRange("G7:J26").activate();
  }`);
  await aside.getByRole("tab", { name: "Pictures" }).click();
  await aside.getByLabel("Unit, where no heading says it").fill("kg");
  await aside.getByRole("button", { name: "Draw the selected cells" }).click();
  await aside.getByRole("button", { name: "Put it in the sheet" }).waitFor();
  await page.evaluate(`{
    const sheet = window.spare.api.getActiveWorkbook().getActiveSheet();
    sheet.getRange("G29").activate();
    sheet.scrollToCell(24, 6);
  }`);
  await aside.getByRole("button", { name: "Put it in the sheet" }).click();
  await aside.getByText("It lies in the sheet").waitFor();
  await page.waitForTimeout(2000);
  await page.screenshot({ path: join(folder, "picture.png") });
} finally {
  await browser.close();
  await serving.close();
}
