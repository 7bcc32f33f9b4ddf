import type { Browser, Locator } from "playwright-core";
import { chromium } from "playwright-core";
import { afterAll, describe, inject } from "vitest";
import { executablePath } from "./chromium";
import { isKept } from "./keptTab";

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
  describe.skipIf(executablePath === undefined)(name, () => {
    afterAll(leaveTidy);
    tests();
  });
}

let joined: Promise<Browser> | undefined;

/** The browser that all tests of a run share. Each process of tests joins it once, and none closes it. */
export async function joinBrowser(): Promise<Browser> {
  if (joined && !(await joined).isConnected()) joined = undefined;
  return (joined ??= chromium.connect(inject("browser")));
}

/** Closes what a group of tests left open, such as a test that failed half-way. */
async function leaveTidy(): Promise<void> {
  const contexts = (await joined)?.contexts() ?? [];
  await Promise.all(contexts.filter((one) => !isKept(one)).map((one) => one.close()));
}

/** Where the built pages are served. */
export const home = inject("home");

/** The product's one accent, in which headings' grounds, the icon and the pictures' bars are. */
export const accent = [0x0e, 0x5a, 0x5e];

/** How many pixels of what is on the screen there have exactly this colour. */
export async function pixelsOf(place: Locator, color: readonly number[]): Promise<number> {
  const png = (await place.screenshot()).toString("base64");
  return place.page().evaluate(
    async ([source, wanted]) => {
      const image = new Image();
      image.src = `data:image/png;base64,${source}`;
      await image.decode();
      const canvas = document.createElement("canvas");
      Object.assign(canvas, { width: image.width, height: image.height });
      const context = canvas.getContext("2d")!;
      context.drawImage(image, 0, 0);
      const { data } = context.getImageData(0, 0, image.width, image.height);
      let count = 0;
      for (let at = 0; at < data.length; at += 4) {
        if (wanted.every((part, index) => data[at + index] === part)) count++;
      }
      return count;
    },
    [png, color] as const,
  );
}
