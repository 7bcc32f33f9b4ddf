import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { keptTab, newTabIn } from "./keptTab";

/** A page of ours that is light, and keeps itself on the device where it may. */
const card = `${home}card/`;

/** What a page can tell of its visitor. */
const told = (page: Page) =>
  page.evaluate(async () => ({
    languages: navigator.languages,
    days: new Intl.DateTimeFormat().resolvedOptions().locale,
    isTouched: matchMedia("(pointer: coarse)").matches,
    fingers: navigator.maxTouchPoints,
    isDark: matchMedia("(prefers-color-scheme: dark)").matches,
    size: [innerWidth, innerHeight],
    isOnline: navigator.onLine,
    workers: (await navigator.serviceWorker.getRegistrations()).length,
    isControlled: navigator.serviceWorker.controller !== null,
    caches: await caches.keys(),
    stored: Object.keys(localStorage),
  }));

const usual = {
  languages: ["en-US", "en"],
  days: "en-US",
  isTouched: false,
  fingers: 0,
  isDark: false,
  size: [1280, 800],
  isOnline: true,
  workers: 0,
  isControlled: false,
  caches: [],
  stored: [],
};

describeInBrowser("the tab that is kept for all tests", () => {
  it("is what a test asks for, and knows nothing of it the next time", async () => {
    const browser = await joinBrowser();
    const visitUsually = async () => {
      const page = await keptTab(browser, home);
      await page.goto(card);
      return page;
    };
    const before = await visitUsually();
    expect(await told(before)).toEqual(usual);

    const viewport = { width: 390, height: 844 };
    const phone = await keptTab(browser, home, {
      viewport,
      locale: "en-GB",
      isMobile: true,
      mayInstall: true,
    });
    expect(phone).toBe(before);
    await phone.emulateMedia({ colorScheme: "dark" });
    await phone.goto(card);
    await phone.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await phone.reload();
    await phone.evaluate(() => localStorage.setItem("load", "100"));
    await phone.context().setOffline(true);
    expect(await told(phone)).toMatchObject({
      languages: ["en-GB"],
      days: "en-GB",
      isTouched: true,
      isDark: true,
      size: [390, 844],
      isOnline: false,
      workers: 1,
      isControlled: true,
      stored: ["load"],
    });

    const after = await visitUsually();
    expect(after).toBe(before);
    expect(await told(after)).toEqual(usual);
  });

  it("is another in the place of one that crashed", async () => {
    const browser = await joinBrowser();
    const before = await keptTab(browser, home);
    const other = await newTabIn(before.context());
    const devtools = await before.context().newCDPSession(before);
    const crashed = before.waitForEvent("crash");
    void devtools.send("Page.crash").catch(() => undefined);
    await crashed;

    expect(await keptTab(browser, home)).toBe(other);
    await other.goto(card);
    expect(await told(other)).toEqual(usual);
  });
});
