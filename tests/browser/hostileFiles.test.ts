import { expect, it } from "vitest";
import { loadPage } from "../bench/load";
import { hostileFiles } from "../hostile/files";
import { checkSheet, checkValue } from "../hostile/files/file";
import { seed } from "../random";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { openForAll } from "./openForAll";
import { firstSheet, openPage, patience, type PageSession } from "./pageSession";

/** Of the hostile files, those that a browser could take otherwise than the reading code alone. */
const refused = [
  'a row "1e308"',
  "an array over a whole sheet",
  "cells to the end of the sheet",
  "a merge of a whole sheet",
  "columns from -2000000000",
  "100,000 minus signs",
];
const opened = [
  "the farthest cell",
  "26 names that double each other",
  "a name that means itself",
  "usual sizes out of all bounds",
  'a frozen pane xSplit="16384" ySplit="1048576"',
  "letters of 1e308 points",
  "a picture over a whole sheet",
  "a picture from elsewhere",
];

describeInBrowser("a file that somebody made to harm", () => {
  let session: PageSession;
  openForAll(async () => {
    session = await openPage(await joinBrowser(), home, { demo: firstSheet });
  });
  const files = new Map(hostileFiles(seed).map((file) => [file.name, file]));
  async function open(name: string, called = "hostile"): Promise<void> {
    const file = files.get(name)!;
    await session.openFile({ name: `${called}.xlsx`, bytes: file.bytes() });
  }

  it("is refused in one line, and the open workbook stays", async () => {
    for (const name of refused) {
      await open(name);
      await session.says().toMatch(/^hostile\.xlsx was not opened: [^\p{Cc}]{8,300}\.$/u);
      await session.shows("Start", "C11").toBe(112.5);
      await session.page.evaluate(() => (document.querySelector("#message")!.textContent = ""));
    }
  });

  it("is opened and computed where there is a right way, and can be worked in", async () => {
    for (const [index, name] of opened.entries()) {
      await open(name, `file${index}`);
      await session.says().toMatch(new RegExp(`^file${index}\\.xlsx is open`));
      await session.shows(checkSheet, "A1").toBeCloseTo(checkValue, 9);
      await session.page.evaluate(() => {
        const workbook = window.spare!.api.getActiveWorkbook()!;
        workbook.setActiveSheet(workbook.getSheetByName("Log")!);
        workbook.getSheetByName("Log")!.getRange("Z9").setValue(9);
      });
      await session.shows("Log", "Z9").toBe(9);
    }
    const addresses = session.requests.filter((address) => !/^(?:blob|data):/.test(address));
    expect(new Set(addresses.map((address) => new URL(address).origin))).toEqual(
      new Set([new URL(home).origin]),
    );
  });

  it("and a long log changed many times over are both borne", async () => {
    const { opened, edit } = await loadPage(session, 2000, 10);
    expect(opened).toBeLessThan(patience);
    expect(edit.worst).toBeLessThan(patience);
  });
});
