import { beforeAll, describe, expect, test } from "vitest";
import { readCatalogue } from "../../src/tools/catalogue";
import { cautions, helpPage } from "../../src/tools/help";

const { functions, enums } = readCatalogue();
let page: string;

beforeAll(async () => {
  page = await helpPage();
});

const escaped = (text: string) =>
  text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");

/** The part of the page that is about one function. */
const articleOf = (id: string) =>
  new RegExp(`<article id="${id}">.*?</article>`, "s").exec(page)?.[0] ?? "";

describe("the help page", () => {
  test("has each function at the place that Excel's help links name, with all that is said of it", () => {
    for (const entry of functions) {
      const article = articleOf(entry.id);
      const said = [entry.description, entry.returns, entry.errors, entry.source];
      const all = [...said, ...entry.examples, ...entry.parameters.map((p) => p.description)];
      for (const text of all) expect(article, entry.id).toContain(escaped(text));
    }
  });

  test("lists the words that an argument offers", () => {
    for (const { id, parameters } of functions) {
      for (const { customEnumId } of parameters) {
        const words = enums.find((each) => each.id === customEnumId)?.values ?? [];
        for (const { stringValue } of words) {
          expect(articleOf(id)).toContain(`<code>"${stringValue}"</code>`);
        }
      }
    }
  });

  test("shows what examples give", () => {
    expect(articleOf("LOADFOR")).toContain(
      "<code>=SPARE.LOADFOR(140, 5, 2, 2.5)</code> gives <output>112.5</output>",
    );
  });

  test("carries every caution, and what a coach must know of cells", () => {
    for (const caution of cautions) expect(page).toContain(escaped(caution));
    const topics = [
      "Blanks",
      "DNS, inj, –",
      "Kilograms and pounds",
      "Tables",
      "Sharing a workbook",
    ];
    for (const topic of topics) expect(page).toContain(`<h3>${topic}</h3>`);
  });

  test("runs nothing and loads nothing from elsewhere", () => {
    expect(page).toContain("default-src 'none'; style-src 'self'; img-src 'self'");
    expect(page).not.toMatch(/<script|\sstyle=|\son\w+=|https?:\/\/(?!\S*doi)/i);
  });
});
