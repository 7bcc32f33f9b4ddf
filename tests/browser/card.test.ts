import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, expect, it } from "vitest";
import { cardFiles, printedFile } from "../../src/cards/handOut";
import { fragmentOf, linkTo } from "../../src/cards/link";
import { chartOf } from "../../src/cards/loads";
import { ROOT } from "../../src/tools/paths";
import { built } from "../built";
import { squadCards } from "../cards/cards";
import { colorViolations, violations } from "./accessibility";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { codesOnPaper, hasPoppler } from "./printedCodes";

const cards = squadCards();
const [ines, callum, zoe] = cards as [(typeof cards)[0], (typeof cards)[0], (typeof cards)[0]];
const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

describeInBrowser("a lifter's card", () => {
  let folder: string;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let requests: string[];

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "cards-"));
    const card = readFileSync(built("card", "index.html"), "utf8");
    for (const { name, text } of cardFiles(card, cards)) writeFileSync(join(folder, name), text);
    browser = await joinBrowser();
  });

  afterAll(() => {
    rmSync(folder, { recursive: true });
  });

  beforeEach(async () => {
    context = await browser.newContext(phone);
    page = await context.newPage();
    requests = [];
    page.on("request", (request) => requests.push(request.url()));
    return () => context.close();
  });

  const fileOf = (name: string) => pathToFileURL(join(folder, name)).href;
  const linkOf = (card: (typeof cards)[0]) => linkTo(`${home}card/`, card);
  const shownChart = () =>
    page.$$eval("tbody tr", (rows) =>
      rows.map((row) => [...row.children].map((cell) => cell.textContent)),
    );
  const chartAsText = (card: (typeof cards)[0], lift: number) =>
    chartOf(card, card.lifts[lift]!).map(({ reps, loads }) =>
      [reps, ...loads].map((value) => (value === undefined ? "" : String(value))),
    );
  const typeSet = async (load: string, reps: string, left: string) => {
    await page.fill("#set-load", load);
    await page.fill("#set-reps", reps);
    await page.fill("#set-left", left);
  };

  it("opens as one file, asks for nothing else, and shows every load of the sheet", async () => {
    await context.setOffline(true);
    await page.goto(fileOf("card-ines-duarte.html"));
    expect(await page.textContent("h1")).toBe("Ines Duarte");
    for (const [index, lift] of ines.lifts.entries()) {
      await page.tap(`.lifts button >> text="${lift.name}"`);
      expect(await page.textContent(".maximum strong")).toBe(`${lift.oneRepMax} kg`);
      expect(await shownChart()).toEqual(chartAsText(ines, index));
    }
    expect(requests.filter((url) => !url.startsWith("file:"))).toEqual([]);
    expect(requests).toHaveLength(1);
  });

  it("answers a set at a tap, with a comma or a point, and says what is wrong", async () => {
    await page.goto(fileOf("card-ines-duarte.html"));
    await typeSet("82,5", "8", "2");
    expect(await page.textContent(".next strong")).toBe("82.5 kg");
    expect(await page.textContent(".answer .plates")).toBe("each side 25 + 5 + 1.25");
    expect(await page.textContent(".estimate")).toBe(
      "One-rep max behind that set: 110 kg; 107.3 to 112.8 if the call is a rep off.",
    );
    await page.tap('[aria-label="how many left, less"]');
    expect(await page.inputValue("#set-left")).toBe("1");
    await page.fill("#set-load", "80kg");
    expect(await page.textContent(".answer")).toBe('load, kg is "80kg"; expected a load above 0.');
    expect(await page.getAttribute("#set-load", "aria-invalid")).toBe("true");
  });

  it("remembers what was typed until tomorrow, a lifter at a time, and forgets at a tap", async () => {
    await page.goto(linkOf(ines));
    await typeSet("80", "8", "3");
    await page.goto("about:blank");
    await page.goto(linkOf(callum));
    expect(await page.inputValue("#set-load")).toBe("");
    await page.goto("about:blank");
    await page.goto(linkOf(ines));
    expect(await page.inputValue("#set-load")).toBe("80");
    await page.tap("text=Forget what I typed");
    expect(await page.inputValue("#set-load")).toBe("");
    expect(await page.evaluate(() => localStorage.length)).toBe(0);
  });

  it("opens by its link, then without a network, and tells no server who it is for", async () => {
    await page.goto(linkOf(callum));
    expect(await page.textContent("h1")).toBe("Callum Reid");
    expect(await shownChart()).toEqual(chartAsText(callum, 0));
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await context.setOffline(true);
    await page.goto("about:blank");
    await page.goto(linkOf(zoe));
    expect(await page.textContent("h1")).toBe("Zoë O’Hara <b>");
    await typeSet("60", "8", "2");
    expect(await page.textContent(".next strong")).toMatch(/^\d+(\.5)? kg$/);
    const sent = requests.map((url) => new URL(url));
    expect(new Set(sent.map(({ origin }) => origin))).toEqual(new Set([new URL(home).origin]));
    expect(sent.filter(({ search }) => search !== "")).toEqual([]);
  });

  it("turns a damaged or hand-made link into one clear line, and runs nothing in it", async () => {
    const whole = fragmentOf(ines);
    for (const fragment of [whole.slice(0, -9), "javascript:alert(1)", "<img src=x onerror=x>"]) {
      await page.goto("about:blank");
      await page.goto(`${home}card/#${fragment}`);
      expect(await page.textContent("[role=alert]")).toMatch(/^This is no card we can show: .+\.$/);
      expect(await page.locator("main > *").count()).toBe(2);
    }
    await page.goto("about:blank");
    await page.goto(linkOf(zoe));
    expect(await page.locator("b, img").count()).toBe(0);
  });

  it("keeps the cautions on the first screen, and all of them a tap away", async () => {
    await page.goto(fileOf("card-ines-duarte.html"));
    const { y, height } = (await page.locator(".cautions summary").boundingBox())!;
    expect(y + height).toBeLessThan(300);
    expect(await page.locator(".cautions li").first().isVisible()).toBe(false);
    await page.tap(".cautions summary");
    expect(await page.locator(".cautions li").allTextContents()).toEqual(
      JSON.parse(readFileSync(join(ROOT, "shared", "cautions.json"), "utf8")),
    );
  });

  it("fits a phone of 320 pixels, with controls for thumbs and names for listeners", async () => {
    const other = await browser.newContext({ ...phone, bypassCSP: true });
    const narrow = await other.newPage();
    for (const width of [320, 390, 768]) {
      await narrow.setViewportSize({ width, height: 800 });
      for (const [colorScheme, against] of [
        ["light", violations],
        ["dark", colorViolations],
      ] as const) {
        await narrow.emulateMedia({ colorScheme });
        await narrow.goto(fileOf("card-ines-duarte.html"));
        await narrow.fill("#set-load", "82.5");
        const widest = await narrow.evaluate(() => document.documentElement.scrollWidth);
        expect(widest).toBe(width);
        const small = await narrow.$$eval(
          "button, input",
          (controls) =>
            controls.filter((control) => control.getBoundingClientRect().height < 48).length,
        );
        expect(small).toBe(0);
        expect(await against(narrow)).toEqual([]);
      }
    }
    await other.close();
  });

  it.skipIf(!hasPoppler)("prints four on a page, with codes that others read", async () => {
    const printed = printedFile(cards, "https://squad.example/card/");
    const pages = await codesOnPaper(browser, printed.text);
    expect(pages).toEqual([cards.map((card) => linkTo("https://squad.example/card/", card))]);
  });
});
