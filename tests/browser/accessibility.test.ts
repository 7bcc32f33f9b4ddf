import { expect, it } from "vitest";
import { colorViolations, violations } from "./accessibility";
import { describeInBrowser, joinBrowser } from "./browser";

describeInBrowser("the accessibility checker", () => {
  it("finds a field without a name and a faint text, and by colours alone the text", async () => {
    const page = await (await joinBrowser()).newPage();
    await page.setContent(
      `<html lang="en"><title>Log</title><main><h1>Log</h1><input><p style="color: #ccc">faint</p></main></html>`,
    );
    const rules = (found: readonly string[]) => found.map((one) => one.split(":")[0]).sort();
    expect(rules(await violations(page))).toEqual(["color-contrast", "label"]);
    expect(rules(await colorViolations(page))).toEqual(["color-contrast"]);
  });
});
