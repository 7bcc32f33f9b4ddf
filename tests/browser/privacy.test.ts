import { join } from "node:path";
import { expect, it } from "vitest";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { firstSheet, openPage } from "./pageSession";

describeInBrowser("everything stays on the device", () => {
  it("lists every request of a session, and everything that is stored", async () => {
    const session = await openPage(await joinBrowser(), home, {
      demo: firstSheet,
      mayInstall: true,
    });
    const { page, context } = session;
    // The service worker's own requests are the context's, not the page's.
    const asked: string[] = [];
    context.on("request", (request) => asked.push(request.url()));
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));

    const sheet = await session.addSheet();
    await session.type("secret");
    await session.fill("A2", [
      ['=IMAGE("icons/x?"&A1)'],
      ['=WEBSERVICE("icons/y?"&A1)'],
      ['=HYPERLINK("https://example.invalid/"&A1,"there")'],
    ]);
    await session.go("A5");
    await session.type("=SPARE.E1RM(100,5)");
    await session.shows(sheet, "A5").toBeCloseTo(116.6667, 3);
    await session.openFile(join(import.meta.dirname, "../xlsx/files/xlsxwriter.xlsx"));
    await session.says().toMatch(/is open/);
    await session.save();

    const all = [...new Set([...session.requests, ...asked])].filter(
      (address) => !/^(?:blob|data):/.test(address),
    );
    expect(all.filter((address) => !address.startsWith(home))).toEqual([]);
    // Only what the build wrote is asked for, and nothing is said to it.
    expect(all.filter((address) => new URL(address).search !== "")).toEqual([]);
    expect(all.filter((address) => address.includes("secret"))).toEqual([]);

    const stored = await page.evaluate(async () => ({
      databases: (await indexedDB.databases()).map(({ name }) => name),
      caches: (await caches.keys()).map((name) => name.replace(/ \w+$/, "")),
      local: Object.keys(localStorage),
      session: Object.keys(sessionStorage),
      cookies: document.cookie,
    }));
    expect(stored).toMatchObject({
      databases: ["reps-to-spare"],
      caches: ["reps-to-spare"],
      session: [],
      cookies: "",
    });
    process.stdout.write(`${all.length} addresses asked for; stored: ${JSON.stringify(stored)}\n`);
    await session.close();
  });
});
