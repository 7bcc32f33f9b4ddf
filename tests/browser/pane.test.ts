import { readFileSync } from "node:fs";
import { buildSync } from "esbuild";
import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { ROOT } from "../../src/tools/paths";
import { readPaneData } from "../../src/tools/paneData";
import { picturesOf } from "../../src/engine/data/pictures";
import { built } from "../built";
import type { FakeExcel } from "../hosts/excel/fakeExcel";
import { caught, named, only } from "../present";
import { colorViolations, violations } from "./accessibility";
import { accent, describeInBrowser, home, joinBrowser, pixelsOf } from "./browser";
import { keptTab, patience } from "./keptTab";
import { openForAll } from "./openForAll";
import type { PageSession } from "./pageSession";
import { firstSheet, listenTo, openPage } from "./pageSession";

const { poll } = expect;

/** How somebody looks at a page. */
type Look = Parameters<Page["emulateMedia"]>[0];

describeInBrowser("the pane", () => {
  let page: Page;
  let complaints: readonly string[];
  let requests: readonly string[];

  /** Opens another page than the workbook's, and notes what it complains of and asks for. */
  async function openOther(look: Look, routes: () => Promise<void>, address: string) {
    page = await keptTab(await joinBrowser(), home);
    await page.emulateMedia(look);
    ({ complaints, requests } = listenTo(page));
    await routes();
    await page.goto(address);
  }

  const pane = () => page.locator("#pane");
  const tab = (name: string) => pane().getByRole("tab", { name });
  const argument = (name: string) =>
    pane().getByRole("textbox", { name: new RegExp(`^${name}( \\(optional\\))?$`) });

  async function find(question: string) {
    await pane().getByLabel("What do you want to know?").fill(question);
    await pane().getByLabel("What do you want to know?").press("Enter");
  }

  describe("beside the embedded workbook", () => {
    let session: PageSession;

    openForAll(async () => {
      session = await openPage(await joinBrowser(), home, { demo: firstSheet });
      ({ page, complaints, requests } = session);
    });

    beforeEach(async () => {
      await tab("Find").click();
      const back = pane().getByRole("button", { name: "Back to the list" });
      if (await back.isVisible()) await back.click();
      await pane().getByLabel("What do you want to know?").fill("");
    });

    it("finds a function by a question and inserts it: the grid shows what the preview showed", async () => {
      const sheet = await session.addSheet();
      await find("how much for five reps with two left");
      await pane().getByRole("heading", { name: "LOADFOR", exact: true }).waitFor();
      await argument("one-rep max").fill("140");
      await argument("reps").fill("5");
      await argument("reserve").fill("2");
      await argument("increment").fill("2,5");
      await poll(() => pane().locator("output").textContent()).toBe("112.5");
      await pane().getByRole("button", { name: "Insert in A1" }).click();
      await session.shows(sheet, "A1").toBe(112.5);
      await pane().getByText(`Inserted in ${sheet}!A1.`).waitFor();
    });

    it("finds ready sheets and pictures by the same box, marked for what they are, and opens them", async () => {
      const box = pane().getByLabel("What do you want to know?");
      await box.fill("forest plot");
      const first = pane().locator(".entries .entry").first();
      expect(await first.innerText()).toMatch(/^Studies, pooled\s+Picture\s/);
      await first.click();
      expect(await tab("Pictures").getAttribute("aria-selected")).toBe("true");
      expect(await pane().getByLabel("Show", { exact: true }).inputValue()).toBe("forest");

      await tab("Find").click();
      await box.fill("training log template");
      expect(await first.innerText()).toMatch(/^Training log with weekly summary\s+Ready sheet\s/);
      await first.click();
      const add = pane().getByRole("button", { name: /^Add the sheet Training log/ });
      expect(await add.evaluate((button) => button === document.activeElement)).toBe(true);
    });

    it("takes arguments from the selection, blanks of a reserve kept blank, and spills", async () => {
      const sheet = await session.addSheet();
      await session.fill("A1", [
        ["load", "reps", "RIR"],
        [100, 5, 2],
        [110, 5, ""],
      ]);
      await session.go("A1:C3");
      await find("E1RM");
      await pane().getByRole("button", { name: "Fill from the selected columns" }).click();
      await pane().getByText("Filled load, reps, reserve.").waitFor();
      const formula = pane().locator(".formula");
      await poll(() => formula.textContent()).toBe('=SPARE.E1RM(A2:A3, B2:B3, C2:C3&"")');
      // A heading's row and a row below are offered the first row of the data instead.
      await session.go("E3");
      await pane()
        .getByText(/^From E3 on, each result would stand in another row/)
        .waitFor();
      await session.go("E1");
      await pane().getByRole("button", { name: "Insert in E2" }).click();
      await session.shows(sheet, "E2").toBeCloseTo(123.3333, 3);
      await session.shows(sheet, "E1").toBe("e1RM");
      expect([null, ""]).toContain(await session.read(sheet, "E3"));
      await pane().getByText(`Inserted in ${sheet}!E2.`).waitFor();

      await page.keyboard.press("Control+z");
      await session.shows(sheet, "E1").toBeNull();
      await poll(async () => (await session.read(sheet, "E2")) ?? "").toBe("");
      await session.go("A1");
      await poll(() => pane().getByText("Inserted in").count()).toBe(0);
    });

    it("asks whose sets are meant before it makes one trend of several lifters'", async () => {
      await session.addSheet();
      await session.fill("A1", [
        ["lifter", "date", "load", "reps"],
        ["Imke", 46000, 100, 5],
        ["Rosa", 46000, 80, 5],
      ]);
      await session.go("A1:D3");
      await find("STRENGTHTREND");
      await pane().getByRole("button", { name: "Fill from the selected columns" }).click();
      await pane()
        .getByText(/“lifter” holds 2 names \(Imke, Rosa\)/)
        .waitFor();
      await poll(() =>
        pane()
          .getByRole("button", { name: /^Insert/ })
          .isDisabled(),
      ).toBe(true);
      await pane().getByLabel("lifter", { exact: true }).selectOption("Rosa");
      await poll(() => pane().locator(".formula").textContent()).toContain(
        'FILTER(B2:B3, A2:A3="Rosa")',
      );
      await pane().getByRole("button", { name: "Each of them: SQUADTREND" }).click();
      await pane().getByRole("heading", { name: "SQUADTREND", exact: true }).waitFor();
    });

    it("says in the preview why a call cannot work", async () => {
      await find("LOADFOR");
      await argument("one-rep max").fill("80kg");
      await argument("reps").fill("5");
      await pane()
        .getByText(/oneRepMax is text, "80kg"/)
        .waitFor();
    });

    it("adds every ready sheet, computed, without an error in it", async () => {
      await tab("Sheets").click();
      const names: Record<string, string> = {};
      for (const { id, title, sheet } of readPaneData().sheets) {
        await pane()
          .getByRole("button", { name: `Add the sheet ${title}` })
          .click();
        const offer = pane()
          .getByRole("listitem")
          .filter({
            has: page.getByRole("heading", { name: title, exact: true }),
          });
        const said = offer.getByRole("status");
        await poll(() => said.textContent()).toContain(`“${sheet.name}`);
        names[id] = only(caught((await said.textContent()) ?? "", /“(.*)”/g));
      }
      const added = (id: string) => named(names, id);
      // One cell of each that only comes out right when all it rests on is computed.
      await session.shows(added("percentages"), "C12").toBe(140);
      await session.shows(added("block-plan"), "I31").toBe(120);
      await session.shows(added("training-log"), "K8").toBe("2026-W02");
      await session.shows(added("reserve-calls"), "H9").toBe(0.75);
      await session.shows(added("test-day"), "O6").toBe("real increase");
      await session.shows(added("studies"), "M41").toBe("change");
      await session.shows(added("squad-plan"), "E20").toBe(70);
      await session.shows(added("today"), "K17").toBe("25 + 20");
      await session.shows(added("who-got-stronger"), "M31").toBe(10);
    });

    it("draws a table that a formula spilled", async () => {
      const before = await session.inSight();
      await tab("Sheets").click();
      await pane()
        .getByRole("button", { name: /^Add the sheet Training log/ })
        .click();
      await poll(session.inSight).toMatch(/^Log/);
      await poll(session.inSight).not.toBe(before);
      await session.go("K7:T10");
      await tab("Pictures").click();
      await pane().getByLabel("Show", { exact: true }).selectOption("Volume load and close sets");
      const picture = pane().getByRole("img", { name: /^Volume load and close sets by week/ });
      // The summary is computed a moment after its sheet is there.
      await poll(async () => {
        await pane().getByRole("button", { name: "Draw the selected cells" }).click();
        return picture.count();
      }).toBe(1);
      // It offers itself for these cells as well, small.
      const offer = pane().getByRole("button", { name: "Volume load and close sets", exact: true });
      await offer.locator("> svg").waitFor({ timeout: patience });
      await offer.click();
      await poll(() => picture.count()).toBe(1);
      expect(await violations(page, "#pane")).toEqual([]);

      // Into the sheet: beside the table where that is selected, or at a cell of one's choice.
      const grid = page.locator("#workbook");
      await session.go("C60");
      await poll(session.firstRow).toBeGreaterThan(0);
      await session.drawn();
      const painted = await pixelsOf(grid, accent);
      for (const [cell, place] of [
        ["K7:T10", { row: 6, column: 20 }],
        ["C61", { row: 60, column: 2 }],
      ] as const) {
        await session.go(cell);
        const placed = (await placedPictures()).length;
        await pane().getByRole("button", { name: "Put it in the sheet" }).click();
        await poll(async () => (await placedPictures()).length, seldom).toBe(placed + 1);
        const last = (await placedPictures()).at(-1)!;
        expect(last.sheetTransform.from).toMatchObject(place);
        expect(last.description).toMatch(/^Volume load and close sets by week/);
        expect(last.source).toMatch(/^data:image\/png;base64,iVBORw0KGgo/);
        expect(last.transform).toMatchObject({ width: 720 });
      }
      // Further down, so that what lies below the cell is on the screen.
      await session.go("C84");
      await poll(() => pixelsOf(grid, accent)).toBeGreaterThan(painted + 10_000);
      await page.keyboard.press("Control+z");
      await poll(async () => (await placedPictures()).length, seldom).toBe(1);
      expect(complaints).toEqual([]);
    });

    /** A workbook with pictures in it is much to ask for ever again. */
    const seldom = { interval: 500, timeout: patience };

    async function placedPictures() {
      const resources = await page.evaluate(() => window.spare!.save().resources);
      return [...picturesOf({ resources }).values()].flat();
    }

    it("asks no address but its own and breaks none of its own rules", async () => {
      await find("meta-analysis");
      await tab("Cautions").click();
      const origins = new Set(requests.map((address) => new URL(address).origin));
      expect([...origins]).toEqual([new URL(home).origin]);
      expect(complaints).toEqual([]);
    });

    it("opens and closes at the press of its button", async () => {
      const button = page.getByRole("button", { name: "Toolbox" });
      expect(await button.getAttribute("aria-expanded")).toBe("true");
      await button.click();
      expect(await pane().isVisible()).toBe(false);
      expect(await button.getAttribute("aria-expanded")).toBe("false");
      await button.click();
      expect(await pane().isVisible()).toBe(true);
    });

    it("gives the accessibility checker nothing to say, in any view", async () => {
      expect(await violations(page, "#pane")).toEqual([]);
      await find("strength trend");
      expect(await violations(page, "#pane")).toEqual([]);
      for (const name of ["Sheets", "Pictures", "Cautions"]) {
        await tab(name).click();
        expect(await violations(page, "#pane")).toEqual([]);
      }
    });
  });

  describe("inside Excel", () => {
    /** The stand-in for Excel that the tests of the port use, in place of Microsoft's script. */
    const { outputFiles } = buildSync({
      stdin: {
        contents: `
          import { fakeExcel } from "./tests/hosts/excel/fakeExcel";
          const fake = fakeExcel();
          Object.assign(window, { fake, Excel: fake.excel, Office: fake.office });`,
        resolveDir: ROOT,
      },
      bundle: true,
      write: false,
    });
    const standIn = only(outputFiles).text;

    async function openPane(look: Look = {}) {
      await openOther(look, routePlatform, `${home}pane.html`);
      await tab("Find").waitFor();
    }

    async function routePlatform() {
      await page.setViewportSize({ width: 320, height: 700 });
      await page.route("https://appsforoffice.microsoft.com/**", (route) =>
        route.fulfill({ contentType: "text/javascript", body: standIn }),
      );
      // Without the header of the workbook's page: the pane's own policy is the one to be kept.
      await page.route("**/pane.html", (route) =>
        route.fulfill({
          contentType: "text/html",
          body: readFileSync(built("pane.html"), "utf8"),
        }),
      );
    }

    const content = (reference: string) =>
      page.evaluate((at) => (window as unknown as { fake: FakeExcel }).fake.content(at), reference);

    it("finds, fills in and inserts by keyboard alone", async () => {
      await openPane();
      const focused = () =>
        page.evaluate(() => {
          const { activeElement } = document;
          const label = activeElement instanceof HTMLInputElement && activeElement.labels?.[0];
          return label ? label.textContent : activeElement?.textContent;
        });
      const tabUntil = async (text: RegExp) => {
        for (let steps = 0; steps < 60; steps++) {
          await page.keyboard.press("Tab");
          if (text.test((await focused()) ?? "")) return;
        }
        throw new Error(`the Tab key does not reach ${text}`);
      };
      await tabUntil(/^Find$/);
      await page.keyboard.press("ArrowRight");
      await poll(focused).toBe("Sheets");
      await page.keyboard.press("ArrowLeft");
      await tabUntil(/What do you want/);
      await page.keyboard.type("which weight for 3 reps leaving 1");
      await tabUntil(/^LOADFOR/);
      await page.keyboard.press("Enter");
      await poll(focused).toBe("LOADFOR");
      await tabUntil(/^one-rep max/);
      await page.keyboard.type("140");
      await tabUntil(/^reps/);
      await page.keyboard.type("3");
      await tabUntil(/^reserve/);
      await page.keyboard.type("1");
      await pane().getByRole("button", { name: "Insert in A1" }).waitFor();
      await tabUntil(/^Insert in A1$/);
      await page.keyboard.press("Enter");
      await poll(() => content("Log!A1")).toBe("=SPARE.LOADFOR(140, 3, 1)");
      await page.keyboard.press("Escape");
      await poll(focused).toMatch(/^LOADFOR/);
    });

    it("overwrites nothing unasked", async () => {
      await openPane();
      await find("PERCENT1RM");
      await argument("reps").fill("5");
      const insert = pane().getByRole("button", { name: "Insert in A1" });
      await insert.waitFor();
      await page.evaluate(() => {
        const { fake } = window as unknown as { fake: FakeExcel };
        fake.log.cells.set("A1", "mine");
      });
      await insert.click();
      await pane().getByText("The cell now holds something.").waitFor();
      expect(await content("Log!A1")).toBe("mine");
      await pane().getByRole("button", { name: "Replace A1" }).click();
      await poll(() => content("Log!A1")).toBe("=SPARE.PERCENT1RM(5)");
    });

    it("adds a ready sheet", async () => {
      await openPane();
      await tab("Sheets").click();
      await pane().getByRole("button", { name: "Add the sheet Percentage chart" }).click();
      await pane().getByText("Added as “Percentage chart”.").waitFor();
      expect(await content("Percentage chart!B11")).toBe("=SPARE.LOADCHART(C6, , , C7, C8)");
    });

    it("draws the selected cells and puts the picture into the sheet", async () => {
      await openPane();
      await page.evaluate(() => {
        const { fake } = window as unknown as { fake: FakeExcel };
        const rows = [
          ["study", "effect", "standard error"],
          ["Crew 1", 0.7, 0.36],
          ["Crew 2", -0.08, 0.31],
          ["Crew 3", 0.93, 0.39],
          ["Crew 4", 0.34, 0.27],
        ];
        rows.forEach((row, down) =>
          row.forEach((value, right) => fake.log.cells.set(`${"ABC"[right]}${down + 1}`, value)),
        );
        fake.select("Log!A1:C5");
      });
      await tab("Pictures").click();
      await pane().getByLabel("Show", { exact: true }).selectOption("Studies, pooled");
      await pane().getByRole("button", { name: "Draw the selected cells" }).click();
      await pane()
        .getByRole("img", { name: /^Forest plot\. 4 studies/ })
        .waitFor();
      expect(await violations(page, "html")).toEqual([]);
      await pane().getByRole("button", { name: "Put it in the sheet" }).click();
      await pane().getByText("It lies in the sheet, by the selected cells.").waitFor();
      const images = await page.evaluate(
        () => (window as unknown as { fake: FakeExcel }).fake.log.images,
      );
      expect(images).toMatchObject([{ width: 540, left: 3 * 48, top: 0 }]);
      // A PNG, whose first bytes name it.
      expect(images[0]?.base64).toMatch(/^iVBORw0KGgo/);
      expect(complaints).toEqual([]);
    });

    it("says why a selection gives no picture", async () => {
      await openPane();
      await tab("Pictures").click();
      await pane().getByRole("button", { name: "Draw the selected cells" }).click();
      await pane()
        .getByText(/^Nothing to draw: /)
        .waitFor();
    });

    it("offers one value where the active cell is in a Table", async () => {
      await openPane();
      await page.evaluate(() => {
        const { fake } = window as unknown as { fake: FakeExcel };
        fake.log.tables.push("B1:B9");
        fake.select("Log!B2");
      });
      await find("CHANGESCORE");
      await pane().getByText("choose one value under “part”").waitFor();
      await pane().getByRole("combobox", { name: "part" }).selectOption("reading");
      await poll(() => pane().getByText("choose one value").count()).toBe(0);
    });

    it("fits into 320 pixels", async () => {
      await openPane();
      for (const id of ["LOADFOR", "GROUPCHANGE", "PERCENTCHART", "POOLSTUDIES"]) {
        await find(id);
        await pane().getByRole("heading", { name: id, exact: true }).waitFor();
        const width = await page.evaluate(() => document.documentElement.scrollWidth);
        expect(width, id).toBeLessThanOrEqual(320);
        await page.keyboard.press("Escape");
      }
    });

    for (const [name, look, against] of [
      ["light", { colorScheme: "light" }, violations],
      ["dark", { colorScheme: "dark" }, colorViolations],
      ["active", { forcedColors: "active" }, colorViolations],
    ] as const) {
      it(`gives the accessibility checker nothing to say (${name})`, async () => {
        await openPane(look);
        expect(await against(page)).toEqual([]);
        await find("is this gain real");
        await argument("before").fill("146");
        await argument("after").fill("170");
        await argument("typical error").fill("7.6");
        await pane().getByText("real increase").first().waitFor();
        expect(await against(page)).toEqual([]);
        for (const view of ["Sheets", "Pictures", "Cautions"]) {
          await tab(view).click();
          expect(await against(page)).toEqual([]);
        }
        expect(complaints).toEqual([]);
      });
    }

    it("asks no address but its own and the platform's script", async () => {
      await openPane();
      const origins = new Set(requests.map((address) => new URL(address).origin));
      expect([...origins].sort()).toEqual([
        new URL(home).origin,
        "https://appsforoffice.microsoft.com",
      ]);
    });
  });

  describe("the help page", () => {
    for (const [colorScheme, against] of [
      ["light", violations],
      ["dark", colorViolations],
    ] as const) {
      it(`gives the accessibility checker nothing to say (${colorScheme})`, async () => {
        await openOther({ colorScheme }, () => Promise.resolve(), `${home}help.html`);
        expect(await against(page)).toEqual([]);
        expect(complaints).toEqual([]);
        expect(requests.every((address) => address.startsWith(home))).toBe(true);
      });
    }
  });
});
