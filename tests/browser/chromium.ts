import { existsSync } from "node:fs";

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

/** The browser on this computer, if there is one. */
export const executablePath = places.find((place) => place !== "" && existsSync(place));

/** How it is started: kept from everything it likes to ask the network on its own. */
export const launchOptions = {
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
};
