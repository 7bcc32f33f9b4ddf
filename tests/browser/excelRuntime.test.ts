import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, it } from "vitest";
import type { Metadata } from "../../src/functions/catalogue";
import { built } from "../built";
import { describeInBrowser, joinBrowser } from "./browser";

/** Where a page of Excel's runtime loads the platform's script from; here it comes from its npm package. */
const PLATFORM = "https://appsforoffice.microsoft.com";
const RUNTIME = `${PLATFORM}/lib/1/hosted/custom-functions-runtime.js`;
const runtimeFile = createRequire(import.meta.url).resolve(
  "@microsoft/office-js/dist/custom-functions-runtime.js",
);
const ORIGIN = "https://addin.example";

describeInBrowser("functions.html under the real custom-functions runtime", () => {
  it("associates every function of functions.json, and asks no address but its own and the platform's", async () => {
    const page = await (await joinBrowser()).newPage();
    const asked: string[] = [];
    const complaints: string[] = [];
    page.on("console", (message) => {
      if (message.type() === "error") complaints.push(message.text());
    });
    page.on("pageerror", (error) => complaints.push(error.message));
    await page.route("**/*", (route) => {
      const url = route.request().url();
      asked.push(url);
      if (url === RUNTIME) {
        return route.fulfill({ path: runtimeFile, contentType: "text/javascript" });
      }
      const { origin, pathname } = new URL(url);
      return origin === ORIGIN && pathname !== "/favicon.ico"
        ? route.fulfill({ path: built(pathname) })
        : route.fulfill({ status: 204 });
    });
    await page.goto(`${ORIGIN}/functions.html`);
    const associated = await page.evaluate(() => {
      const { CustomFunctions } = window as unknown as {
        CustomFunctions: { _association: { mappings: Record<string, unknown> } };
      };
      return Object.keys(CustomFunctions._association.mappings);
    });
    const metadata = JSON.parse(readFileSync(built("functions.json"), "utf8")) as Metadata;
    expect(associated.sort()).toEqual(metadata.functions.map(({ id }) => id).sort());
    expect(complaints).toEqual([]);
    const origins = new Set(asked.map((url) => new URL(url).origin));
    expect([...origins].sort()).toEqual([ORIGIN, PLATFORM].sort());
    await page.close();
  });
});
