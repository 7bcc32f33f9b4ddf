import { existsSync } from "node:fs";
import type { Browser } from "playwright-core";
import { chromium } from "playwright-core";
import { describe } from "vitest";

/** Where a Chromium or Chrome usually is; `CHROMIUM` names another place. */
const places = [
  process.env.CHROMIUM ?? "",
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
];

const executablePath = places.find((place) => place !== "" && existsSync(place));

/**
 * A group of tests that need a browser. Where there is none they are skipped, and say so; in CI,
 * where nobody reads that, a missing browser is an error.
 */
export function describeInBrowser(name: string, tests: () => void): void {
  if (executablePath === undefined) {
    const trouble = `no Chromium was found for "${name}"; set CHROMIUM to where it is`;
    if (process.env.CI) throw new Error(trouble);
    process.stderr.write(`SKIPPED: ${trouble}\n`);
  }
  describe.skipIf(executablePath === undefined)(name, tests);
}

/** Starts the browser, kept from everything it likes to ask the network on its own. */
export function launchBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}
