import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { openForAll } from "./openForAll";
import type { PageSession } from "./pageSession";
import { firstSheet, openPage, ready, visit } from "./pageSession";

const log = "Week 1's log";

const button = ({ page }: PageSession, text: string) =>
  page.getByRole("button", { name: text, exact: true });
const list = async (session: PageSession) => {
  await session.page.locator(".library-button").click();
  await button(session, "New").waitFor();
};

describeInBrowser("workbooks on the device", () => {
  /** The demo's first sheet, which is enough where not the demo is the matter. */
  const openShort = async () => openPage(await joinBrowser(), home, { demo: firstSheet });

  it("keep every change, under names of their own, and never over the demo", async () => {
    const session = await openShort();
    const { page } = session;
    await session.name().toBe("Demo");
    await session.go("C7");
    await session.type("150");
    await session.name().toBe("My copy of the demo");

    await session.choose("New");
    await session.name().toBe("Workbook");
    await session.go("A1");
    await session.type("mine");
    await session.type("=SPARE.E1RM(100,5)");
    await session.shows("Sheet1", "A2").toBeCloseTo(116.6667, 3);

    await page.reload();
    await ready(page);
    await session.name().toBe("Workbook");
    await session.shows("Sheet1", "A2").toBeCloseTo(116.6667, 3);
    await session.shows("Sheet1", "A1").toBe("mine");

    await session.choose("My copy of the demo");
    await session.name().toBe("My copy of the demo");
    await session.shows("Start", "C7").toBe(150);
    await session.choose("Demo");
    await session.name().toBe("Demo");
    await session.shows("Start", "C7").toBe(140);
    await session.close();
  });

  it("stay when the tab is killed the moment after a change", async () => {
    const before = await openShort();
    await before.go("C7");
    await before.type("150");
    await before.name().toBe("My copy of the demo");
    await before.type("8");
    await before.shows("Start", "C8").toBe(8);
    // The cell holds it before the change is over; it has been made once it is drawn.
    await before.page.evaluate(() => new Promise(requestAnimationFrame));
    const tab = await before.context.newCDPSession(before.page);
    const crashed = before.page.waitForEvent("crash");
    void tab.send("Page.crash").catch(() => undefined);
    await crashed;

    const after = await visit(before.context, home);
    await after.name().toBe("My copy of the demo");
    await after.shows("Start", "C8").toBe(8);
    expect(await after.read("Start", "C7")).toBe(150);
    // 150 kg for 8 with 2 in reserve: 150 / (1 + 10/30) = 112.5.
    await after.shows("Start", "C11").toBe(112.5);
  });

  it("are open in one tab at a time", async () => {
    const session = await openShort();
    await session.go("C7");
    await session.type("150");
    await session.name().toBe("My copy of the demo");
    const other = await visit(session.context, home, session.page);
    await other.name().toBe("Demo");
    await other.says().toBe("My copy of the demo was not opened: it is open in another tab.");
    await session.close();
  });

  describe("beside others", () => {
    let session: PageSession;

    openForAll(async () => {
      session = await openShort();
    });

    /** Begins a workbook with a load in its first cell, waits until it is kept, and says under what name. */
    async function beginWith(load: number): Promise<string> {
      const { page } = session;
      await session.begin();
      await session.go("A1");
      await session.type(String(load));
      await session.shows("Sheet1", "A1").toBe(load);
      const name = (await page.locator(".library-button").textContent())!;
      await list(session);
      await button(session, `Rename ${name}`).waitFor();
      await page.keyboard.press("Escape");
      return name;
    }

    it("are renamed, copied, and deleted when that is answered with yes", async () => {
      const { page } = session;
      const name = await beginWith(150);
      await list(session);
      await button(session, `Rename ${name}`).click();
      await page.getByLabel("Name", { exact: true }).fill("Winter block");
      await page.keyboard.press("Enter");
      await session.name().toBe("Winter block");
      await button(session, "Copy Winter block").click();
      await button(session, "Copy of Winter block").waitFor();
      await button(session, "Copy of Winter block").click();
      await session.name().toBe("Copy of Winter block");
      await session.shows("Sheet1", "A1").toBe(150);
      await session.go("A1");
      await session.type("160");
      await session.shows("Sheet1", "A1").toBe(160);

      const asked: string[] = [];
      let yes = false;
      page.on("dialog", (dialog) => {
        asked.push(dialog.message());
        void (yes ? dialog.accept() : dialog.dismiss());
      });
      onTestFinished(() => void page.removeAllListeners("dialog"));
      await list(session);
      await button(session, "Delete Winter block").click();
      await expect.poll(() => asked.length).toBe(1);
      expect(await button(session, "Winter block").count()).toBe(1);
      yes = true;
      await button(session, "Delete Winter block").click();
      await expect.poll(() => button(session, "Winter block").count()).toBe(0);
      expect(asked[0]).toBe("Delete Winter block from this device? It was never saved to a file.");
      await page.reload();
      await ready(page);
      await session.name().toBe("Copy of Winter block");
      await session.shows("Sheet1", "A1").toBe(160);
    });

    it("are saved back to the file they came from, where the browser may write to it", async () => {
      const { page } = session;
      // A file of the browser's own stands in for one on disk, which no test can choose.
      const file = readFileSync(
        join(import.meta.dirname, "../xlsx/files/xlsxwriter.xlsx"),
        "base64",
      );
      await page.evaluate(async (encoded) => {
        const folder = await navigator.storage.getDirectory();
        const handle = await folder.getFileHandle("Week 1.xlsx", { create: true });
        const writable = await handle.createWritable();
        await writable.write(Uint8Array.from(atob(encoded), (letter) => letter.charCodeAt(0)));
        await writable.close();
        Object.assign(window, { showOpenFilePicker: () => Promise.resolve([handle]) });
      }, file);
      await session.press("Open");
      await session.says().toMatch(/^Week 1.xlsx is open/);
      await session.name().toBe("Week 1");
      await session.go("B2");
      await session.type("120");
      await session.shows(log, "B2").toBe(120);
      await page.keyboard.press("Control+S");
      await session.says().toMatch(/^Week 1 was saved to Week 1.xlsx/);

      await session.press("Open");
      await session.says().toMatch(/^Week 1.xlsx is open/);
      await session.name().toBe("Week 1 2");
      await session.shows(log, "B2").toBe(120);
    });

    it("say so when the device is full, lose nothing, and are kept again when it is not", async () => {
      const { page } = session;
      const name = await beginWith(150);
      await page.evaluate(() => {
        const store = IDBObjectStore.prototype;
        const { add, put } = store;
        const full = () => {
          throw new DOMException("full", "QuotaExceededError");
        };
        Object.assign(store, { add: full, put: full });
        Object.assign(window, { makeRoom: () => Object.assign(store, { add, put }) });
      });
      await session.go("A2");
      await session.type("8");
      await session
        .says()
        .toBe(
          `What you change in ${name} is in this tab only: this device has no room left. Save it to a file before you close the page.`,
        );
      await page.evaluate(() => (window as unknown as { makeRoom(): void }).makeRoom());
      await session.type("1");
      await session.says().toBe("Everything is kept on this device again.");
      await page.reload();
      await ready(page);
      await session.shows("Sheet1", "A2").toBe(8);
      await session.shows("Sheet1", "A3").toBe(1);
    });
  });
});
