import { afterEach, beforeEach, describe, expect, it } from "vitest";
// The built page of cards goes into what the command writes.
import "../built";
import { buildBook, spare, workFolder } from "./support";

let folder: ReturnType<typeof workFolder>;
beforeEach(() => (folder = workFolder()));
afterEach(() => folder.remove());

const text = (address: string, words: string) =>
  `<c r="${address}" t="inlineStr"><is><t>${words}</t></is></c>`;

/** A sheet of cards in which a maximum is worked out from a set. */
const sheet =
  `<row r="1">${text("A1", "lifter")}${text("B1", "Back squat, kg")}</row>` +
  `<row r="2">${text("A2", "Ines Duarte")}<c r="B2"><f>SPARE.E1RM(90,5)</f><v>1</v></c></row>` +
  `<row r="3">${text("A3", "Callum Reid")}<c r="B3"><v>145</v></c></row>`;

const cards = (...more: string[]) => {
  const input = folder.put("book.xlsx", buildBook({ sheets: { Cards: sheet, Other: "" } }));
  return spare("cards", input, "-o", folder.path("out"), ...more);
};

describe("cards from the command line", () => {
  it("makes a file a lifter, from maxima as they are worked out now", async () => {
    const { status, out, err } = await cards();
    expect([status, err]).toEqual([0, ""]);
    expect(out).toContain("2 cards in");
    expect(out).toContain("can read the lifter's name and loads");
    const file = Buffer.from(folder.bytes("out/card-ines-duarte.html")).toString();
    expect(file).toContain('["Back squat",105]');
    expect(folder.bytes("out/card-callum-reid.html").length).toBeGreaterThan(10_000);
    expect(Buffer.from(folder.bytes("out/cards-to-print.html")).toString()).not.toContain("<svg");
  });

  it("adds links and codes where the address of the card page is known", async () => {
    await cards("--page", "https://squad.example/card/");
    const links = Buffer.from(folder.bytes("out/links.txt")).toString().trim().split("\n");
    expect(links).toHaveLength(2);
    expect(links[0]).toMatch(/^Ines Duarte\thttps:\/\/squad\.example\/card\/#[\w-]+$/);
    expect(Buffer.from(folder.bytes("out/cards-to-print.html")).toString()).toContain("<svg");
  });

  it("refuses in one line what cannot be", async () => {
    expect(await cards("--page", "http://squad.example/")).toMatchObject({
      status: 2,
      err: expect.stringContaining("expected its address, https://"),
    });
    expect(await cards("--sheet", "Nowhere")).toMatchObject({
      status: 2,
      err: expect.stringContaining('there is no sheet "Nowhere"'),
    });
    expect(await cards("--sheet", "Other")).toMatchObject({
      status: 2,
      err: expect.stringContaining('no cell says "lifter"'),
    });
  });

  it("says what there would be, and writes nothing, with --dry-run", async () => {
    const { status, out } = await cards("--dry-run", "--json");
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      output: null,
      lifters: ["Ines Duarte", "Callum Reid"],
      files: ["card-ines-duarte.html", "card-callum-reid.html", "cards-to-print.html"],
    });
    expect(folder.names()).toEqual(["book.xlsx"]);
  });

  it("gives each of several workbooks a folder of its own", async () => {
    const inputs = ["rowers.xlsx", "coxes.xlsx"].map((name) =>
      folder.put(name, buildBook({ sheets: { Cards: sheet } })),
    );
    expect((await spare("cards", ...inputs, "-o", folder.path("out"))).status).toBe(0);
    for (const squad of ["rowers", "coxes"]) {
      expect(folder.bytes(`out/${squad}/card-callum-reid.html`).length).toBeGreaterThan(10_000);
    }
  });
});
