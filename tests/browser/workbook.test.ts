import type { ICellData } from "@univerjs/core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { readDemo } from "../../src/tools/demo";
import { contentSecurityPolicy } from "../../src/hosts/page/policy";
import { named } from "../present";
import { computedDemo } from "../theDemo";
import { describeInBrowser, home, joinBrowser } from "./browser";

/** A computer with other work to do takes its time over a page this size. */
const patience = 60_000;

/** "B3" for the third row's second cell; the demo's sheets are not wider than the alphabet. */
const addressOf = (row: number, column: number) => `${String.fromCharCode(65 + column)}${row + 1}`;

vi.setConfig({ testTimeout: 2 * patience });

describeInBrowser("the embedded workbook", () => {
  let browser: Browser;
  let page: Page;
  const complaints: string[] = [];
  const requests: string[] = [];

  beforeAll(async () => {
    browser = await joinBrowser();
    page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.on("console", (message) => {
      if (["error", "warning"].includes(message.type())) complaints.push(message.text());
    });
    page.on("pageerror", (error) => complaints.push(error.message));
    page.on("request", (request) => requests.push(request.url()));
    await page.goto(home);
    await page.waitForFunction(() => window.spare !== undefined, null, { timeout: patience });
  }, 2 * patience);

  afterAll(() => browser.close());

  /** Opens an empty sheet beside the demo's, with its first cell selected, and says its name. */
  async function openEmptySheet(): Promise<string> {
    const tabs = page.locator("[data-u-comp=slide-tab-item]");
    const before = await tabs.allTextContents();
    await page.locator("[data-u-comp=sheet-bar-append-button]").first().click();
    await expect.poll(() => tabs.count(), { timeout: patience }).toBe(before.length + 1);
    const added = (await tabs.allTextContents()).find((name) => !before.includes(name));
    await selectCell("A1");
    return added!;
  }

  const typeInto = async (text: string, key = "Enter") => {
    await page.keyboard.type(text, { delay: 20 });
    await page.keyboard.press(key);
  };

  /** Goes to a cell by writing its address where the sheet shows the selected one's. */
  async function selectCell(address: string) {
    const box = page.locator("[data-u-comp=defined-name] input");
    await box.click();
    await box.fill(address);
    await box.press("Enter");
    await expect.poll(() => box.inputValue(), { timeout: patience }).toBe(address);
  }

  const read = (sheet: string, address: string) =>
    page.evaluate(([s, a]) => window.spare!.readCell(s, a), [sheet, address] as const);

  const shows = (sheet: string, address: string) =>
    expect.poll(() => read(sheet, address), { timeout: patience });

  it("opens on the demo, and computes in it what the engine computes without a screen", async () => {
    const data = readDemo();
    const book = await computedDemo();
    const formulas = data.sheetOrder.flatMap((id) => {
      const { name, cellData } = named(data.sheets, id);
      return Object.entries(cellData ?? {}).flatMap(([row, cells]) =>
        Object.entries(cells as Record<number, ICellData>)
          .filter(([, cell]) => cell.f)
          .map(([column]) => [name!, addressOf(Number(row), Number(column))] as const),
      );
    });
    const expected = formulas.map(([sheet, address]) => book.read(sheet, address));

    expect(formulas.length).toBeGreaterThan(0);
    const readAll = () =>
      page.evaluate((cells) => cells.map(([s, a]) => window.spare!.readCell(s, a)), formulas);
    // Chromium and Node come with arithmetic libraries of their own, which differ in a last digit.
    const isSame = (value: unknown, other: unknown) =>
      typeof value === "number" && typeof other === "number"
        ? Math.abs(value - other) <= 1e-10 * Math.abs(other)
        : value === other;
    const different = async () =>
      (await readAll()).flatMap((value, index) =>
        isSame(value, expected[index])
          ? []
          : [{ at: formulas[index], value, other: expected[index] }],
      );
    await expect.poll(different, { timeout: patience }).toEqual([]);
  });

  it("answers a formula typed into an empty cell, and again when an input changes", async () => {
    const sheet = await openEmptySheet();
    await typeInto("=SPARE.LOADFOR(140,5,2,2.5)");
    await shows(sheet, "A1").toBe(112.5);

    await typeInto("140", "Tab");
    await typeInto("=SPARE.LOADFOR(A2,5,2,2.5)");
    await shows(sheet, "B2").toBe(112.5);
    await selectCell("A2");
    await typeInto("160");
    await shows(sheet, "B2").toBe(130);
  });

  it("offers our functions while one is typed, and shows their arguments", async () => {
    await openEmptySheet();
    await page.keyboard.type("=spare.loadf", { delay: 20 });
    const offer = page.locator("li", { hasText: "SPARE.LOADFOR" });
    await offer.waitFor();
    expect(await offer.textContent()).toMatch(/SPARE\.LOADFOR\w+/);
    await offer.click();
    await page.getByText("[reserve]").first().waitFor();
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
  });

  it("says why a cell shows an error, when that cell is selected", async () => {
    const sheet = await openEmptySheet();
    await typeInto('=SPARE.LOADFOR("80kg",5)');
    await shows(sheet, "A1").toBe("#VALUE!");
    const message = page.locator("#message");
    await expect.poll(() => message.textContent(), { timeout: patience }).toBe("");
    await page.keyboard.press("ArrowUp");
    await expect
      .poll(() => message.textContent(), { timeout: patience })
      .toMatch(/^oneRepMax is text, "80kg"/);

    await typeInto("=SPARE.LOADFOR(80,5)", "Control+Enter");
    await expect.poll(() => message.textContent(), { timeout: patience }).toBe("");
  });

  it("asks no address but its own, and breaks none of its own rules, whatever is done in it", async () => {
    await page.getByText("Before anybody lifts").first().click();
    await page.getByRole("listitem").filter({ hasText: "not a clearance to lift" }).waitFor();

    const origins = new Set(requests.map((address) => new URL(address).origin));
    expect([...origins]).toEqual([new URL(home).origin]);
    expect(requests.length).toBeGreaterThan(3);
    expect(complaints).toEqual([]);
  });

  it("carries its content security policy in the page and in the answer's header", async () => {
    const response = await fetch(home);
    expect(response.headers.get("Content-Security-Policy")).toContain(contentSecurityPolicy);
    expect(await response.text()).toContain(`content="${contentSecurityPolicy}"`);
    expect(contentSecurityPolicy).toContain("script-src 'self';");

    // Run from a timer, as the page's own code would: what a test runs directly is let through.
    const evaluated = await page.evaluate(
      () =>
        new Promise<string>((resolve) => {
          setTimeout(() => {
            try {
              resolve(String(Function("return 'ran'")()));
            } catch (error) {
              resolve(String(error));
            }
          });
        }),
    );
    expect(evaluated).toMatch(/Content Security Policy/);
  });
});
