import { expect, it } from "vitest";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { firstSheet, openPage } from "./pageSession";

/** 5 January and 1 May 2026, as days since the last of 1899. */
const january = 46_027;
const may = 46_143;

describeInBrowser("dates in the browser's language", () => {
  it.each([
    ["en-GB", january, "5 Jan 2026"],
    // What a browser here speaks unless it is told otherwise.
    ["en-US", may, "1 May 2026"],
  ] as const)("are typed, pasted and edited (%s)", async (locale, day, text) => {
    const language = locale === "en-US" ? {} : { locale };
    const session = await openPage(await joinBrowser(), home, { demo: firstSheet, ...language });
    expect(await session.page.evaluate(() => navigator.language)).toBe(locale);
    const sheet = await session.addSheet();
    for (const typed of ["5/1/2026", "26/1/2026", "8-10", "5/1/2026"]) await session.type(typed);
    await session.shows(sheet, "A4").toBe(day);
    expect(await session.read(sheet, "A1")).toBe(day);
    expect(await session.shown("A1")).toBe(text);
    expect(await session.shown("A2")).toBe("26 Jan 2026");
    expect(await session.read(sheet, "A3")).toBe("8-10");

    // A number over a date is a number.
    await session.go("A4");
    await session.type("1.5");
    await session.shows(sheet, "A4").toBe(1.5);
    expect(await session.shown("A4")).toBe("1.5");

    // Edited and left as it was, it is the same day.
    await session.go("A1");
    await session.page.keyboard.press("F2");
    await session.page.keyboard.press("Enter");
    await expect.poll(() => session.selected()).toBe("A2");
    expect(await session.read(sheet, "A1")).toBe(day);

    await session.context.grantPermissions(["clipboard-read", "clipboard-write"]);
    await session.page.evaluate(() => navigator.clipboard.writeText("5/1/2026\t8-10"));
    await session.go("C1");
    await session.page.keyboard.press("Control+V");
    await session.shows(sheet, "C1").toBe(day);
    expect(await session.read(sheet, "D1")).toBe("8-10");
    expect(session.complaints).toEqual([]);
    await session.close();
  });
});
