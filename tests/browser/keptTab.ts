import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";

/** A computer with other work to do takes its time over a page this size. */
export const patience = 60_000;

/** How many times slower pages are than they could be: `SLOW=6` brings out the test that does not wait. */
const slowness = Number(process.env.SLOW ?? 1);

/** The window's size unless a test has it otherwise. */
export const usualSize = { width: 1280, height: 800 };

/** A tab in a browser context of its own. */
export async function newTab(browser: Browser, options: BrowserContextOptions = {}): Promise<Page> {
  const context = await browser.newContext({
    viewport: usualSize,
    // Fetching everything once more would only slow a test down that does not ask for it.
    serviceWorkers: "block",
    ...options,
  });
  // A test answers the dialog for a file input, not the one for a file that a page may write to.
  await context.addInitScript(() => {
    Object.assign(window, { showOpenFilePicker: undefined, showSaveFilePicker: undefined });
  });
  return newTabIn(context);
}

/** One more tab of a browser context. */
export async function newTabIn(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(patience);
  if (slowness > 1) {
    const devtools = await context.newCDPSession(page);
    await devtools.send("Emulation.setCPUThrottlingRate", { rate: slowness });
  }
  return page;
}

/*
 * The page's script is large. A tab that has run it before runs it again in half the time and less, so one tab
 * is kept for all tests that need nothing special, and is made as new before each use.
 */

const kept = new WeakMap<Browser, Page>();

/** The contexts of tabs that are kept. */
const contexts = new WeakSet<BrowserContext>();

export const isKept = (context: BrowserContext): boolean => contexts.has(context);

/** The tab that is kept, as somebody finds it who was never here. */
export async function keptTab(browser: Browser, address: string): Promise<Page> {
  const before = kept.get(browser);
  if (before && (await becomesNew(before, address))) return before;
  await before?.context().close();
  const page = await newTab(browser);
  kept.set(browser, page);
  contexts.add(page.context());
  return page;
}

/** Has a tab forget everything; says whether it did, which one that hangs or has crashed does not. */
async function becomesNew(page: Page, address: string): Promise<boolean> {
  const context = page.context();
  try {
    for (const event of ["console", "pageerror", "request", "dialog"]) {
      page.removeAllListeners(event);
    }
    const others = context.pages().filter((one) => one !== page);
    await Promise.all(others.map((one) => one.close()));
    await page.unrouteAll();
    await leave(page, address);
    const { origin } = new URL(address);
    const devtools = await context.newCDPSession(page);
    await devtools.send("Storage.clearDataForOrigin", { origin, storageTypes: "all" });
    await devtools.detach();
    await context.clearPermissions();
    await page.emulateMedia({ media: null, colorScheme: null, forcedColors: null });
    await page.setViewportSize(usualSize);
    return true;
  } catch {
    return false;
  }
}

/** Goes where nothing is, but on the same server: elsewhere the tab would begin again with a new process. */
export const leave = (page: Page, address: string): Promise<unknown> =>
  page.goto(new URL("nothing-here", address).href);
