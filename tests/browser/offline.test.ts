import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it, onTestFinished } from "vitest";
import { serve } from "../../src/tools/serve";
import { built } from "../built";
import { describeInBrowser, joinBrowser } from "./browser";
import { firstSheet, openPage, ready, sheetsOfDemo } from "./pageSession";

describeInBrowser("without a network", () => {
  let parent: string;

  beforeAll(() => {
    // Any folder of any host will do.
    parent = mkdtempSync(join(tmpdir(), "offline-"));
    const folder = join(parent, "some", "folder");
    cpSync(built(), folder, { recursive: true });
    // The page is opened four times, and what it opens on does not matter.
    writeFileSync(join(folder, "demo.json"), sheetsOfDemo(firstSheet));
  });

  afterAll(() => {
    rmSync(parent, { recursive: true });
  });

  it("the page opens after one visit, installs, and takes a new version only when told to", async () => {
    const serving = await serve(parent, 3950);
    onTestFinished(() => serving.close());
    const address = `${serving.address}some/folder/`;
    const session = await openPage(await joinBrowser(), address, { mayInstall: true });
    const { page, context } = session;
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await expect
      .poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null))
      .toBe(true);

    // Chromium says what would keep it from installing the page as an app.
    const devtools = await context.newCDPSession(page);
    const { installabilityErrors } = await devtools.send("Page.getInstallabilityErrors");
    expect(installabilityErrors.filter(({ errorId }) => errorId !== "in-incognito")).toEqual([]);

    await context.setOffline(true);
    await page.reload();
    await ready(page);
    const sheet = await session.addSheet();
    await session.type("=SPARE.E1RM(100,5)");
    await session.shows(sheet, "A1").toBeCloseTo(116.6667, 3);
    await page.getByRole("tab", { name: "Sheets" }).waitFor();
    await context.setOffline(false);

    const worker = join(parent, "some", "folder", "service-worker.js");
    const before = readFileSync(worker, "utf8");
    const version = `after${/VERSION="(\w+)"/.exec(before)![1]}`;
    writeFileSync(worker, before.replace(/VERSION="\w+"/, `VERSION="${version}"`));
    await page.reload();
    await ready(page);
    const take = page.getByRole("button", { name: "Take the new version" });
    await take.waitFor();
    const caches = () => page.evaluate(() => window.caches.keys());
    expect(await caches()).toHaveLength(2);
    await Promise.all([page.waitForEvent("load"), take.click()]);
    await ready(page);
    await expect.poll(caches).toEqual([`reps-to-spare ${version}`]);
    await session.shows(sheet, "A1").toBeCloseTo(116.6667, 3);
    await session.close();
  });
});
