import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { chromium, type BrowserContext } from "playwright-core";
import { cardFiles } from "../../src/cards/handOut";
import { linkTo } from "../../src/cards/link";
import { buildIfStale } from "../../src/tools/dist";
import { DIST } from "../../src/tools/paths";
import { serve } from "../../src/tools/serve";
import { executablePath } from "../browser/chromium";
import { squadCards } from "../cards/cards";

/** A phone a quarter as fast as this machine, on the slowest network that a browser imitates. */
const SLOW_NETWORK = {
  offline: false,
  latency: 2000,
  downloadThroughput: 50_000,
  uploadThroughput: 50_000,
};

/** The card's first paint on a slow phone: by its link, again without a network, as a file, beside an empty page. */
export async function benchCardPaint(): Promise<void> {
  await buildIfStale(["card"]);
  const built = readFileSync(join(DIST, "card", "index.html"), "utf8");
  const [card] = squadCards();
  const folder = mkdtempSync(join(tmpdir(), "card-"));
  const [file] = cardFiles(built, squadCards());
  writeFileSync(join(folder, "card.html"), file!.text);
  writeFileSync(join(folder, "empty.html"), "<!doctype html><title>empty</title><p>.");
  const serving = await serve(DIST, 4300);
  const browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });
  try {
    const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
    const link = linkTo(`${serving.address}card/`, card!);
    const address = (name: string) => pathToFileURL(join(folder, name)).href;
    const rows = [
      ["link, first visit, slow network", await paintOf(context, link, true)],
      ["link, later visit, slow network", await paintOf(context, link, true)],
      ["file", await paintOf(context, address("card.html"), false)],
      ["an empty page as a file", await paintOf(context, address("empty.html"), false)],
    ] as const;
    console.log(`\nThe card: ${round(gzipSync(built).length / 1024)} KiB compressed`);
    console.table(rows.map(([what, ms]) => ({ what, "first paint ms": Math.round(ms) })));
  } finally {
    await browser.close();
    await serving.close();
    rmSync(folder, { recursive: true });
  }
}

async function paintOf(context: BrowserContext, url: string, slowly: boolean): Promise<number> {
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  if (slowly) {
    await session.send("Network.enable");
    await session.send("Network.emulateNetworkConditions", SLOW_NETWORK);
  }
  await session.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  await page.goto(url);
  await page.waitForFunction(
    () => performance.getEntriesByName("first-contentful-paint").length > 0,
  );
  const [paint] = await page.evaluate(() =>
    performance.getEntriesByName("first-contentful-paint").map(({ startTime }) => startTime),
  );
  // What keeps the page for later visits is in place before the next one.
  if (slowly) await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.close();
  return paint!;
}

const round = (value: number) => Math.round(value * 10) / 10;
