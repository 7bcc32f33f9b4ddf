import type { Browser, BrowserContext, Page, ViewportSize } from "playwright-core";

/** A computer with other work to do takes its time over a page this size. */
export const patience = 60_000;

/** How many times slower pages are than they could be: `SLOW=6` brings out the test that does not wait. */
const slowness = Number(process.env.SLOW ?? 1);

/** The window's size unless a test has it otherwise. */
export const usualSize = { width: 1280, height: 800 };

/** One more tab of a browser context; one that a page there opens shares that page's process, and its compiled script. */
export async function newTabIn(context: BrowserContext, opener?: Page): Promise<Page> {
  const page = await (opener ? openedBy(opener) : context.newPage());
  page.setDefaultTimeout(patience);
  if (slowness > 1) {
    const devtools = await context.newCDPSession(page);
    await devtools.send("Emulation.setCPUThrottlingRate", { rate: slowness });
  }
  return page;
}

async function openedBy(page: Page): Promise<Page> {
  const opening = page.waitForEvent("popup");
  await page.evaluate(() => void window.open("about:blank"));
  return opening;
}

/*
 * The page's script is large. A tab that has run it before runs it again in a quarter of the time, so one tab is
 * kept for all tests. Before each use it is made as new, and then as the next visitor has it.
 */

/** What the page is visited with. Nothing of it outlasts the visit. */
export interface Device {
  readonly viewport?: ViewportSize;
  /** The language that its browser speaks. */
  readonly locale?: string;
  /** Whether it is a phone or a tablet, under a finger. */
  readonly isMobile?: boolean;
  /** Whether the page may keep itself there, which fetches everything once more. */
  readonly mayInstall?: boolean;
}

const kept = new WeakMap<Browser, Page>();

/** Ends what was special about the last visit in a kept tab's browser context. */
const endings = new WeakMap<BrowserContext, () => Promise<unknown>>();

export const isKept = (context: BrowserContext): boolean => endings.has(context);

/** The tab that is kept, as somebody finds it who was never here. */
export async function keptTab(
  browser: Browser,
  address: string,
  device: Device = {},
): Promise<Page> {
  const page = (await keptBefore(browser, address)) ?? (await newTab(browser));
  kept.set(browser, page);
  await become(page, device);
  return page;
}

/** The tab that was kept, as new, or in place of one that a test had crash, another that this test opened. */
async function keptBefore(browser: Browser, address: string): Promise<Page | undefined> {
  const context = kept.get(browser)?.context();
  for (const page of context?.pages() ?? []) {
    if (await becomesNew(page, address)) return page;
  }
  await context?.close();
  return undefined;
}

/** A tab in a browser context of its own. */
async function newTab(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ viewport: usualSize });
  // A test answers the dialog for a file input, not the one for a file that a page may write to.
  await context.addInitScript(() => {
    Object.assign(window, { showOpenFilePicker: undefined, showSaveFilePicker: undefined });
  });
  return newTabIn(context);
}

/** Has a tab forget everything; says whether it did, which one that hangs or has crashed does not. */
async function becomesNew(page: Page, address: string): Promise<boolean> {
  const context = page.context();
  try {
    for (const event of ["console", "pageerror", "request", "dialog"]) {
      page.removeAllListeners(event);
    }
    context.removeAllListeners("request");
    await context.setOffline(false);
    await Promise.all([page.unrouteAll(), context.unrouteAll()]);
    const visited = [address, page.url()].filter((one) => one.startsWith("http"));
    await leave(page, address);
    const others = context.pages().filter((one) => one !== page);
    await Promise.all(others.map((one) => one.close()));
    const devtools = await context.newCDPSession(page);
    for (const origin of new Set(visited.map((one) => new URL(one).origin))) {
      await devtools.send("Storage.clearDataForOrigin", { origin, storageTypes: "all" });
    }
    await devtools.detach();
    await endings.get(context)?.();
    await context.clearPermissions();
    await page.emulateMedia({ media: null, colorScheme: null, forcedColors: null });
    await page.setViewportSize(usualSize);
    return true;
  } catch {
    return false;
  }
}

/** Makes a tab that is as new into one of this device. */
async function become(page: Page, device: Device): Promise<void> {
  const { viewport = usualSize, locale, isMobile = false, mayInstall = false } = device;
  const context = page.context();
  const refusal = mayInstall ? undefined : await context.addInitScript(refuseToInstall);
  // What a session of the developer's tools pretends ends with it, and it ends with its tab.
  const devtools = await context.newCDPSession(page);
  const detach = () => devtools.detach().catch(() => undefined);
  endings.set(context, () => Promise.all([refusal?.dispose(), detach()]));
  await page.setViewportSize(viewport);
  if (locale !== undefined) {
    const userAgent = await page.evaluate(() => navigator.userAgent);
    await devtools.send("Emulation.setUserAgentOverride", { userAgent, acceptLanguage: locale });
    await devtools.send("Emulation.setLocaleOverride", { locale });
  }
  if (isMobile) {
    await devtools.send("Emulation.setTouchEmulationEnabled", { enabled: true });
    await devtools.send("Emulation.setDeviceMetricsOverride", {
      ...viewport,
      screenWidth: viewport.width,
      screenHeight: viewport.height,
      screenOrientation: { type: "portraitPrimary", angle: 0 },
      deviceScaleFactor: 1,
      mobile: true,
    });
  }
}

/** Runs in a page before its own scripts. One that is not served securely has nothing to refuse. */
function refuseToInstall(): void {
  if (!("ServiceWorkerContainer" in window)) return;
  Object.assign(ServiceWorkerContainer.prototype, { register: () => Promise.resolve() });
}

/** Goes where next to nothing is, but on the same server: elsewhere the tab would begin again with a new process. */
export const leave = (page: Page, address: string): Promise<unknown> =>
  page.goto(new URL("icons/icon-16.png", address).href);
