import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { expect } from "vitest";
import type { CellContent } from "../../src/engine/inspect";

/** A computer with other work to do takes its time over a page this size. */
export const patience = 60_000;

/** One page with the workbook, and what a person does in it. */
export interface PageSession {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Errors and warnings that the page wrote to its console. */
  readonly complaints: readonly string[];
  /** Addresses that were asked for. */
  readonly requests: readonly string[];
  read(sheet: string, address: string): Promise<CellContent>;
  /** Waits for what a cell holds. */
  shows(sheet: string, address: string): ReturnType<typeof expect.poll>;
  /** What a cell shows, as a person sees it. */
  shown(address: string): Promise<string>;
  /** The line under the workbook. */
  says(): ReturnType<typeof expect.poll>;
  /** Selects a cell by writing its address where the sheet shows the selected one's. */
  go(address: string): Promise<void>;
  type(text: string, key?: string): Promise<void>;
  /** Shows a sheet by its name. */
  show(sheet: string): Promise<void>;
  /** Opens an empty sheet and says its name. */
  addSheet(): Promise<string>;
  close(): Promise<void>;
}

/** Opens the page in a browser context of its own, and waits until it can be used. */
export async function openPage(
  browser: Browser,
  address: string,
  options: BrowserContextOptions = {},
): Promise<PageSession> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    // Fetching everything once more would only slow a test down that does not ask for it.
    serviceWorkers: "block",
    ...options,
  });
  // A test answers the dialog for a file input, not the one for a file that a page may write to.
  await context.addInitScript(() => {
    Object.assign(window, { showOpenFilePicker: undefined, showSaveFilePicker: undefined });
  });
  return visit(context, address);
}

/** Opens the page in a context that may have been here before. */
export async function visit(context: BrowserContext, address: string): Promise<PageSession> {
  const page = await context.newPage();
  page.setDefaultTimeout(patience);
  const complaints: string[] = [];
  const requests: string[] = [];
  page.on("console", (message) => {
    const ours = !message.text().includes("blocked by Playwright");
    if (ours && ["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("request", (request) => requests.push(request.url()));
  await page.goto(address);
  await ready(page);
  return { ...actions(page), context, page, complaints, requests, close: () => context.close() };
}

/** Waits until the workbook is there. */
export const ready = (page: Page) =>
  page.waitForFunction(() => window.spare !== undefined, null, { timeout: patience });

function actions(page: Page) {
  const poll = <T>(read: () => T) => expect.poll(read, { timeout: patience });
  const read = (sheet: string, address: string) =>
    page.evaluate(([s, a]) => window.spare!.readCell(s, a), [sheet, address] as const);
  const nameBox = page.locator("[data-u-comp=defined-name] input");

  async function go(address: string): Promise<void> {
    await nameBox.click();
    await nameBox.fill(address);
    await nameBox.press("Enter");
    await poll(() => nameBox.inputValue()).toBe(address);
  }

  return {
    read,
    go,
    shows: (sheet: string, address: string) => poll(() => read(sheet, address)),
    shown: (address: string) =>
      page.evaluate(
        (at) =>
          window.spare!.api.getActiveWorkbook()!.getActiveSheet().getRange(at).getDisplayValue(),
        address,
      ),
    says: () => poll(() => page.locator("#message").textContent()),
    async type(text: string, key = "Enter") {
      await page.keyboard.type(text, { delay: 20 });
      await page.keyboard.press(key);
    },
    async show(name: string) {
      await page.evaluate((wanted) => {
        const workbook = window.spare!.api.getActiveWorkbook()!;
        workbook.setActiveSheet(workbook.getSheetByName(wanted)!);
      }, name);
    },
    async addSheet(): Promise<string> {
      const tabs = page.locator("[data-u-comp=slide-tab-item]");
      await poll(() => tabs.count()).toBeGreaterThan(0);
      const before = await tabs.allTextContents();
      await page.locator("[data-u-comp=sheet-bar-append-button]").first().click();
      await poll(() => tabs.count()).toBe(before.length + 1);
      const added = (await tabs.allTextContents()).find((name) => !before.includes(name))!;
      await go("A1");
      return added;
    },
  };
}
