import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { IWorkbookData } from "@univerjs/core";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { expect } from "vitest";
import type { CellContent } from "../../src/engine/inspect";
import { built } from "../built";
import { keptTab, leave, newTabIn, patience, type Device } from "./keptTab";

export { patience };

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
  /** The name of the open workbook. */
  name(): ReturnType<typeof expect.poll>;
  /** Selects cells by writing their address where the sheet shows the selected one's. */
  go(address: string): Promise<void>;
  /** The address of the selected cells. */
  selected(): Promise<string>;
  type(text: string, key?: string): Promise<void>;
  /** Fills cells of the sheet in sight from one on, for a test that is not about typing. */
  fill(address: string, rows: readonly (readonly (string | number)[])[]): Promise<void>;
  /** Presses a button by its whole name. */
  press(button: string): Promise<void>;
  /** Opens the list of workbooks and chooses one of it, or a new one. */
  choose(button: string): Promise<void>;
  /** Begins an empty workbook. */
  begin(): Promise<void>;
  /** Opens a file: a path, or a name and what is in it. */
  openFile(file: string | { readonly name: string; readonly bytes: Uint8Array }): Promise<void>;
  /** Saves the workbook with Ctrl+S, or a button, and says under what name and with what in it. */
  save(button?: string): Promise<{ readonly name: string; readonly bytes: Uint8Array }>;
  /** The name of the sheet in sight, and its first row in sight, counted from 0. */
  inSight(): Promise<string>;
  firstRow(): Promise<number>;
  /** Shows a sheet by its name. */
  show(sheet: string): Promise<void>;
  /** Opens an empty sheet and says its name. */
  addSheet(): Promise<string>;
  /** Waits until what is there is drawn as well. */
  drawn(): Promise<void>;
  close(): Promise<unknown>;
}

/** Who opens the page, and what it opens on. */
export interface Visitor extends Device {
  /** How many of the demo's sheets are there, if not all: its first is enough for most, and there in half the time. */
  readonly demo?: readonly string[];
}

/** Opens the page as somebody who was never here, and waits until it can be used. */
export async function openPage(
  browser: Browser,
  address: string,
  { demo, ...visitor }: Visitor = {},
): Promise<PageSession> {
  const page = await keptTab(browser, address, visitor);
  if (demo) {
    await page
      .context()
      .route("**/demo.json", (route) =>
        route.fulfill({ contentType: "application/json", body: sheetsOfDemo(demo) }),
      );
  }
  return { ...(await open(page, address)), close: () => leave(page, address) };
}

/** Opens the page in one more tab of a visitor who is or was here. A page that opens one has it beside itself. */
export async function visit(
  context: BrowserContext,
  address: string,
  opener?: Page,
): Promise<PageSession> {
  const page = await newTabIn(context, opener);
  return { ...(await open(page, address)), close: () => page.close() };
}

/** The sheet that the demo opens on. */
export const firstSheet = ["Start"];

/** The demo with these of its sheets alone, as the page loads it. */
export function sheetsOfDemo(names: readonly string[]): string {
  const demo = JSON.parse(readFileSync(built("demo.json"), "utf8")) as IWorkbookData;
  const sheets = Object.entries(demo.sheets).filter(([, { name }]) => names.includes(name!));
  const kept = new Set(sheets.map(([id]) => id));
  return JSON.stringify({
    ...demo,
    sheetOrder: demo.sheetOrder.filter((id) => kept.has(id)),
    sheets: Object.fromEntries(sheets),
  });
}

async function open(page: Page, address: string) {
  const heard = listenTo(page);
  await page.goto(address);
  await ready(page);
  return { ...actions(page), ...heard, context: page.context(), page };
}

/** What the spreadsheet says whenever a second workbook is opened. */
const NOT_OURS = /^Component \S+ already exists\.$/;

/** Notes from now on what a page complains of, and what it asks for. */
export function listenTo(page: Page): Pick<PageSession, "complaints" | "requests"> {
  const complaints: string[] = [];
  const requests: string[] = [];
  page.on("console", (message) => {
    const ours = !NOT_OURS.test(message.text());
    if (ours && ["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("request", (request) => requests.push(request.url()));
  return { complaints, requests };
}

/** Waits until the workbook is there. */
export const ready = (page: Page) =>
  page.waitForFunction(() => window.spare !== undefined, null, { timeout: patience });

function actions(page: Page) {
  const { poll } = expect;
  const read = (sheet: string, address: string) =>
    page.evaluate(([s, a]) => window.spare!.readCell(s, a), [sheet, address] as const);
  const nameBox = page.locator("[data-u-comp=defined-name] input");
  const selected = () =>
    page.evaluate(
      () => window.spare!.api.getActiveWorkbook()!.getActiveRange()?.getA1Notation() ?? "",
    );
  const sheetNames = () =>
    page.evaluate(() =>
      window
        .spare!.api.getActiveWorkbook()!
        .getSheets()
        .map((sheet) => sheet.getSheetName()),
    );
  const inSight = () =>
    page.evaluate(() => window.spare!.api.getActiveWorkbook()!.getActiveSheet().getSheetName());
  const press = (name: string) => page.getByRole("button", { name, exact: true }).click();

  async function go(address: string): Promise<void> {
    await nameBox.click();
    await nameBox.fill(address);
    await nameBox.press("Enter");
    await poll(() => nameBox.inputValue()).toBe(address);
    await poll(selected).toBe(address);
  }

  async function choose(button: string): Promise<void> {
    await page.locator(".library-button").click();
    const list = page.getByRole("dialog", { name: "Workbooks" });
    await list.getByRole("button", { name: button, exact: true }).click();
    await list.waitFor({ state: "hidden" });
  }

  return {
    read,
    go,
    selected,
    inSight,
    press,
    choose,
    shows: (sheet: string, address: string) => poll(() => read(sheet, address)),
    shown: (address: string) =>
      page.evaluate(
        (at) =>
          window.spare!.api.getActiveWorkbook()!.getActiveSheet().getRange(at).getDisplayValue(),
        address,
      ),
    says: () => poll(() => page.locator("#message").textContent()),
    name: () => poll(() => page.locator(".library-button").textContent()),
    async type(text: string, key = "Enter") {
      await page.keyboard.type(text);
      await page.keyboard.press(key);
    },
    fill: (address: string, rows: readonly (readonly (string | number)[])[]) =>
      page.evaluate(
        ([at, values]) => {
          const sheet = window.spare!.api.getActiveWorkbook()!.getActiveSheet();
          const { startRow, startColumn } = sheet.getRange(at).getRange();
          sheet
            .getRange(startRow, startColumn, values.length, values[0]!.length)
            .setValues(values.map((each) => [...each]));
        },
        [address, rows] as const,
      ),
    async begin() {
      const open = () => page.evaluate(() => window.spare!.api.getActiveWorkbook()?.getId());
      const before = await open();
      await choose("New");
      await poll(async () => [undefined, before].includes(await open())).toBe(false);
    },
    async openFile(file: string | { readonly name: string; readonly bytes: Uint8Array }) {
      const choosing = page.waitForEvent("filechooser");
      await press("Open");
      const chosen =
        typeof file === "string"
          ? file
          : { name: file.name, mimeType: "", buffer: Buffer.from(file.bytes) };
      await (await choosing).setFiles(chosen);
    },
    async save(button?: string) {
      const downloading = page.waitForEvent("download");
      await (button === undefined ? page.keyboard.press("Control+S") : press(button));
      const download = await downloading;
      // The browser may be another computer's, and then its own copy is out of reach.
      const folder = mkdtempSync(join(tmpdir(), "saved-"));
      try {
        const path = join(folder, "saved");
        await download.saveAs(path);
        return { name: download.suggestedFilename(), bytes: new Uint8Array(readFileSync(path)) };
      } finally {
        rmSync(folder, { recursive: true });
      }
    },
    firstRow: () =>
      page.evaluate(
        () =>
          window.spare!.api.getActiveWorkbook()!.getActiveSheet().getScrollState()
            .sheetViewStartRow,
      ),
    async show(name: string) {
      await page.evaluate((wanted) => {
        const workbook = window.spare!.api.getActiveWorkbook()!;
        workbook.setActiveSheet(workbook.getSheetByName(wanted)!);
      }, name);
      await poll(inSight).toBe(name);
    },
    async addSheet(): Promise<string> {
      const before = await sheetNames();
      await page.locator("[data-u-comp=sheet-bar-append-button]").first().click();
      await poll(async () => !before.includes(await inSight())).toBe(true);
      const added = await inSight();
      await go("A1");
      return added;
    },
    drawn: () =>
      page.evaluate(
        () =>
          new Promise<void>((resolve) => {
            requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
          }),
      ),
  };
}
