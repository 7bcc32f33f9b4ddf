import type { Browser, Page } from "playwright-core";
import { beforeAll, expect, it } from "vitest";
import { describeInBrowser, joinBrowser } from "../../browser/browser";
import { drawOn, openPage } from "./page";
import { awkwardSelections, demoSelections } from "./selections";

const looks = [{ width: 280 }, { width: 320 }, { width: 320, dark: true }, { width: 720 }] as const;

const selections = [
  ...demoSelections.map((one) => ({ ...one, what: "the demo" })),
  ...awkwardSelections,
];

describeInBrowser("the pictures", () => {
  let browser: Browser;
  let page: Page;
  const complaints: string[] = [];

  beforeAll(async () => {
    browser = await joinBrowser();
    page = await openPage(browser, complaints);
  });

  it.each(selections)(
    "$id of $what is one image with its words, keeps within its frame, and no text lies on another",
    async ({ id, values, units }) => {
      for (const look of looks) {
        const alt = await drawOn(page, id, values, { ...look, units });
        const svg = page.locator("body > svg");
        expect(await svg.getAttribute("role")).toBe("img");
        const label = await svg.getAttribute("aria-label");
        expect(label).toContain(alt.split(".")[0]);
        expect(await page.locator("svg style").count()).toBe(0);
        const { outside, overlapping, width, broken } = await page.evaluate(inspect);
        expect(width).toBe(look.width);
        expect(broken, "coordinates that are no numbers").toEqual([]);
        expect(outside, `outside at ${look.width}`).toEqual([]);
        expect(overlapping, `overlapping at ${look.width}`).toEqual([]);
      }
      expect(complaints).toEqual([]);
    },
  );

  it("become PNGs of as many pixels as asked for, with something on them", async () => {
    await drawOn(page, "forest", demoSelections.find(({ id }) => id === "forest")!.values, {
      width: 720,
    });
    const { type, width, height, drawn, shades } = await page.evaluate(async () => {
      const svg = document.querySelector("svg")!;
      const blob = await window.pictures.svgToPng(svg, 2);
      const bitmap = await createImageBitmap(blob);
      const canvas = document.createElement("canvas");
      canvas.width = bitmap.width;
      canvas.height = bitmap.height;
      const context = canvas.getContext("2d")!;
      context.drawImage(bitmap, 0, 0);
      const { data } = context.getImageData(0, 0, bitmap.width, bitmap.height);
      const bytes = new DataView(data.buffer);
      const seen = new Set<number>();
      // Red, green, blue, and how far they cover what is behind.
      for (let at = 0; at < data.length; at += 4) seen.add(bytes.getUint32(at) >>> 8);
      return {
        type: blob.type,
        width: bitmap.width,
        height: bitmap.height,
        drawn: Number(svg.getAttribute("height")),
        shades: [...seen],
      };
    });
    expect(type).toBe("image/png");
    expect(width).toBe(1440);
    expect(height).toBe(2 * drawn);
    expect(shades).toContain(0xffffff);
    expect(shades, "the accent").toContain(0x0e5a5e);
    expect(shades.length).toBeGreaterThan(20);
    expect(complaints).toEqual([]);
  });
});

/** Runs in the page: what of the picture's text cannot be read. */
function inspect() {
  const svg = document.querySelector("svg")!;
  const frame = svg.getBoundingClientRect();
  const texts = [...svg.querySelectorAll("text")].filter((text) => text.textContent !== "");
  const boxes = texts.map((text) => ({
    text: text.textContent,
    box: text.getBoundingClientRect(),
    isTurned: /rotate\(-/.test(text.getAttribute("transform") ?? ""),
  }));
  const outside = boxes
    .filter(
      ({ box }) =>
        box.left < frame.left - 0.5 ||
        box.right > frame.right + 0.5 ||
        box.top < frame.top - 0.5 ||
        box.bottom > frame.bottom + 0.5,
    )
    .map(({ text }) => text);
  // The boxes of turned labels overlap although the labels do not. A box is a little higher than its letters.
  const level = boxes.filter(({ isTurned }) => !isTurned);
  const overlapping: string[] = [];
  for (const [at, one] of level.entries()) {
    for (const other of level.slice(at + 1)) {
      const across =
        Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
      const down =
        Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
      if (across > 0.5 && down > 3.5) overlapping.push(`${one.text} | ${other.text}`);
    }
  }
  const broken = [...svg.querySelectorAll("*")].flatMap((element) =>
    [...element.attributes]
      .filter(({ value }) => /NaN|undefined|Infinity/.test(value))
      .map(({ name, value }) => `${element.tagName} ${name}=${value}`),
  );
  return { outside, overlapping, broken, width: frame.width };
}
