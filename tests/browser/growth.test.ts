import { beforeEach, expect, it } from "vitest";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { openForAll } from "./openForAll";
import type { PageSession } from "./pageSession";
import { firstSheet, openPage } from "./pageSession";

describeInBrowser("a sheet grows before anybody reaches its edge", () => {
  let session: PageSession;
  let sheet: string;

  openForAll(async () => {
    session = await openPage(await joinBrowser(), home, { demo: firstSheet });
  });

  beforeEach(async () => {
    sheet = await session.addSheet();
    await cutTo(200, 26);
  });

  const cutTo = (rows: number, columns: number) =>
    session.page.evaluate(
      ([r, c]) => {
        const active = window.spare!.api.getActiveWorkbook()!.getActiveSheet();
        active.setRowCount(r);
        active.setColumnCount(c);
      },
      [rows, columns] as const,
    );

  const column = async (letter: string, from: number, to: number) => {
    const cells = [];
    for (let row = from; row <= to; row++) cells.push(await session.read(sheet, letter + row));
    return cells;
  };

  it("while one types down", async () => {
    await session.go("A198");
    await cutTo(200, 26);
    for (const letter of "abcde") await session.type(letter);
    await session.shows(sheet, "A202").toBe("e");
    expect(await column("A", 198, 202)).toEqual(["a", "b", "c", "d", "e"]);
  });

  it("while one types to the right with the Tab key", async () => {
    await session.go("Z1");
    await cutTo(200, 26);
    for (const week of ["1", "2", "3", "4", "5"]) await session.type(week, "Tab");
    await session.shows(sheet, "AD1").toBe(5);
    for (const [at, week] of [
      ["Z1", 1],
      ["AA1", 2],
      ["AB1", 3],
      ["AC1", 4],
    ] as const) {
      expect(await session.read(sheet, at)).toBe(week);
    }
  });

  it("under the arrow keys", async () => {
    await session.go("A195");
    for (let step = 0; step < 90; step++) await session.page.keyboard.press("ArrowDown");
    await session.type("x");
    await session.shows(sheet, "A285").toBe("x");
  });

  it("for an address in the box of the selected cell, as far as files reach", async () => {
    await session.go("A250");
    await session.type("here");
    await session.shows(sheet, "A250").toBe("here");
    await session.go("XFD1048576");
    await session.type("last");
    await session.shows(sheet, "XFD1048576").toBe("last");
  });

  it("for what is pasted", async () => {
    await session.context.grantPermissions(["clipboard-read", "clipboard-write"]);
    const lines = Array.from({ length: 300 }, (_, row) => `${row}\t${2 * row}`);
    await session.page.evaluate((text) => navigator.clipboard.writeText(text), lines.join("\n"));
    await session.go("Z190");
    await cutTo(200, 26);
    await session.page.keyboard.press("Control+V");
    await session.shows(sheet, "AA489").toBe(598);
    expect(await session.read(sheet, "Z489")).toBe(299);
  });

  it("for a result that spills", async () => {
    await session.go("A198");
    await cutTo(200, 26);
    await session.type("=SEQUENCE(500)");
    await session.shows(sheet, "A697").toBe(500);
    await session.go("Y1");
    await cutTo(697, 26);
    await session.type("=TRANSPOSE(A198:A210)");
    await session.shows(sheet, "AK1").toBe(13);
  });

  it("for a formula that reads past it", async () => {
    const before = session.complaints.length;
    await session.type("=SUM(A100:AZ4000)+1");
    await session.shows(sheet, "A1").toBe(1);
    expect(session.complaints.slice(before)).toEqual([]);
  });
});
