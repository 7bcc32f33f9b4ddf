import { join } from "node:path";
import { expect, it } from "vitest";
import { implementations } from "../../src/functions/implementations";
import { cellAt, elementAt, only } from "../present";
import { describeInBrowser, home, joinBrowser } from "./browser";
import { openForAll } from "./openForAll";
import type { PageSession } from "./pageSession";
import { firstSheet, openPage } from "./pageSession";

/*
 * The four tasks of a coach's week, each from an empty workbook and by the Toolbox alone. What the squad has (its names,
 * maxima, sets) stands on the first sheet beforehand; from there on everything that a person does is counted.
 *
 * `STEPS=folder` takes a picture of every step at both sizes, for somebody to look at.
 */

/** Where pictures of the steps go, if they are asked for. */
const STEPS = process.env["STEPS"];

const SMALLEST = { width: 1280, height: 720 };
const SIZES = STEPS === undefined ? [SMALLEST] : [{ width: 1440, height: 900 }, SMALLEST];

const LIFTERS = "Imke Rosa Dilan Tarek Nele Jorin Paula Sven".split(" ");

type Row = readonly (string | number)[];

/** Epley's curve, straight from 1 rep to 2, and loads to 2.5 kg: plain arithmetic, not our functions. */
const fraction = (t: number) => (t < 2 ? 1 + (t - 1) * (1 / (1 + 2 / 30) - 1) : 1 / (1 + t / 30));
const round = (load: number) => Math.ceil(load / 2.5 - 0.5 - 1e-9) * 2.5;

describeInBrowser("a coach's week, by the Toolbox alone", () => {
  let session: PageSession;

  openForAll(async () => {
    session = await openPage(await joinBrowser(), home, { demo: firstSheet });
  });

  for (const size of SIZES) {
    const name = `${size.width} × ${size.height}`;

    it(`gives eight lifters their loads in 4 actions (${name})`, async () => {
      const given = LIFTERS.map((lifter, at): Row => [
        lifter,
        70 + 7.5 * at,
        3 + (at % 4),
        at % 3,
        5,
        2,
        2.5,
      ]);
      const heads = "lifter;load, kg;reps;reserve;target reps;target reserve;step, kg".split(";");
      const coach = await begin(size, "loads", [heads, ...given]);
      await coach.select("A1:G9");
      await coach.ask("load of the next set");
      await coach.press("Fill from the selected columns");
      await coach.press(/^Insert in H2/);

      const [above, ...loads] = await coach.column("H", 1, 9, (cells) => cells.every(isFilled));
      expect(above).toBe("next load, kg");
      given.forEach(([, load, reps, reserve], at) => {
        const most = Number(load) / fraction(Number(reps) + Number(reserve));
        expect(loads[at]).toBeCloseTo(round(most * fraction(7)), 9);
      });
      expect(coach.end()).toBeLessThanOrEqual(4);
    });

    it(`plans six weeks for the squad and prints them in 8 (${name})`, async () => {
      const given = LIFTERS.map((lifter, at): Row => [lifter, 90 + 7.5 * at, 60 + 5 * at]);
      const coach = await begin(size, "plan", [
        ["lifter", "Squat, kg", "Bench pull, kg"],
        ...given,
      ]);
      await coach.select("A1:C9");
      await coach.open("Sheets");
      await coach.press("Add the sheet Squad plan");
      await coach.shows("E35", isFilled);
      // One block ends a rep farther from failure than the sheet has it.
      await coach.select("I8");
      await coach.enter("2");
      await coach.shows("I18", (reserve) => reserve === 2);

      const weeks = [..."EFGHIJ"];
      const plan = [9, 9, 9, 5.5, 5.5, 5].map(
        (reps, week) => reps + elementAt([3, 3, 2, 2, 2, 4], week),
      );
      const rows = given.flatMap(([lifter, squat, pull]): Row[] => [
        [String(lifter), "Squat", Number(squat)],
        [String(lifter), "Bench pull", Number(pull)],
      ]);
      for (const [at, [lifter, lift, most]] of rows.entries()) {
        const row = 20 + at;
        expect(await coach.cells(row, ["B", "C", "D"])).toEqual([lifter, lift, most]);
        const loads = plan.map((t) => round(Number(most) * fraction(t)));
        expect(await coach.cells(row, weeks)).toEqual(loads);
      }
      const paper = await coach.print();
      expect(paper.filter(([, name]) => LIFTERS.includes(name ?? ""))).toHaveLength(16);
      expect(paper.at(-1)).toEqual(expect.arrayContaining(["Sven", "Bench pull"]));
      expect(coach.end()).toBeLessThanOrEqual(8);
    });

    it(`writes a set for the log and gives the next load in 6 (${name})`, async () => {
      const given = LIFTERS.map((lifter, at): Row => [lifter, 90 + 7.5 * at, 60 + 5 * at]);
      const coach = await begin(size, "today", [
        ["lifter", "Squat, kg", "Bench pull, kg"],
        ...given,
      ]);
      await coach.select("A1:C9");
      await coach.open("Sheets");
      await coach.press("Add the sheet Today");
      await coach.shows("E22", isFilled);
      await coach.select("I17");
      await coach.enter("4");

      await coach.shows("J17", isFilled);
      for (const [at, [lifter, most]] of given.entries()) {
        const row = 15 + at;
        const load = round(Number(most) * fraction(7));
        const next = at === 2 ? round((load / fraction(9)) * fraction(7)) : "";
        expect(await coach.cells(row, ["B", "D", "E", "J"])).toEqual([lifter, most, load, next]);
        const [side, nextSide] = await coach.cells(row, ["F", "K"]);
        expect(weightOf(side)).toBe(load);
        expect(at === 2 ? weightOf(nextSide) : nextSide).toBe(next);
      }
      await coach.shows("R15", (reserve) => reserve === 4);
      const load = round(105 * fraction(7));
      expect(await coach.cells(15, [..."NOPQRS"])).toEqual(["Dilan", "Squat", load, 5, 4, 1]);
      expect((await coach.cells(16, ["N"])).filter(isFilled)).toEqual([]);
      expect(coach.end()).toBeLessThanOrEqual(6);
    });

    it(`says who got stronger in 4 (${name})`, async () => {
      const heads = ["date", "lifter", "lift", "load, kg", "reps", "reserve", "sets"];
      const log = Array.from({ length: 10 }, (_week, week) =>
        LIFTERS.flatMap((lifter, at): Row[] => [
          [
            46_000 + 7 * week,
            lifter,
            "Squat",
            60 + 7.5 * at + (at % 3) * week,
            6,
            (week + at) % 4,
            3,
          ],
          [46_003 + 7 * week, lifter, "Bench pull", 40 + 5 * at + (at % 2) * week, 8, week % 3, 3],
        ]),
      ).flat();
      const coach = await begin(size, "stronger", [heads, ...log]);
      await coach.select(`A1:G${log.length + 1}`);
      await coach.open("Sheets");
      await coach.press("Add the sheet Who got stronger");
      await coach.shows("J23", isFilled);

      for (let row = 8; row < 24; row++) {
        const [lifter, lift, ...shown] = await coach.cells(row, [..."BCDEFGHIJ"]);
        const own = log.filter((set) => set[1] === lifter && set[2] === lift);
        const alone = (part: string) => cellAt(trendOf(own, part), 0, 0);
        const parts = "days;sets;today;low;high;rise;chance of rise".split(";");
        expect(own).toHaveLength(10);
        shown.forEach((value, at) =>
          expect(value).toBeCloseTo(Number(alone(elementAt(parts, at))), 9),
        );
      }
      expect((await coach.cells(24, ["B"])).filter(isFilled)).toEqual([]);
      await coach.shows("B3", (text) => /^\d+ of 16 got stronger/.test(String(text)));
      expect(coach.end()).toBeLessThanOrEqual(4);
    });
  }

  /** An empty workbook with what the squad has, and a coach before it whose actions are counted. */
  async function begin(size: typeof SMALLEST, task: string, given: readonly Row[]) {
    const { page } = session;
    const pane = page.locator("#pane");
    await page.setViewportSize(size);
    await session.begin();
    await pane.getByRole("tab", { name: "Find" }).click();
    const back = pane.getByRole("button", { name: "Back to the list" });
    if (await back.isVisible()) await back.click();
    const corner = String.fromCharCode(64 + elementAt(given, 0).length) + String(given.length);
    await session.fill("A1", given);
    await session.shows("Sheet1", corner).toBe(elementAt(given, given.length - 1).at(-1));

    // The spreadsheet warns of its own when one workbook takes another's place.
    const before = session.complaints.length;
    let actions = 0;
    const act = async (what: string, action: () => Promise<unknown>) => {
      actions++;
      await action();
      if (STEPS === undefined) return;
      await page.waitForTimeout(1500);
      await page.screenshot({ path: join(STEPS, `${task}-${size.width}-${actions}-${what}.png`) });
    };
    const readAll = (addresses: readonly string[]) =>
      page.evaluate((all) => {
        const sheet = window.spare!.api.getActiveWorkbook()!.getActiveSheet().getSheetName();
        return all.map((address) => window.spare!.readCell(sheet, address));
      }, addresses);
    const cells = (row: number, columns: readonly string[]) =>
      readAll(columns.map((column) => column + row));

    return {
      cells,
      /** Chooses cells by their address. */
      select: (address: string) => act("select", () => session.go(address)),
      /** Types a question and opens what is found first. */
      ask: (question: string) =>
        act("ask", async () => {
          const box = pane.getByLabel("What do you want to know?");
          await box.fill(question);
          await box.press("Enter");
          await pane.getByRole("button", { name: "Back to the list" }).waitFor();
        }),
      open: (tab: string) => act("open", () => pane.getByRole("tab", { name: tab }).click()),
      press: (button: string | RegExp) =>
        act("press", () => pane.getByRole("button", { name: button }).click()),
      /** Types into the selected cell. */
      enter: (text: string) => act("enter", () => session.type(text)),
      /** Prints the sheet; what would be on paper, row by row. */
      async print(): Promise<string[][]> {
        await page.evaluate(() => {
          Object.assign(window, { paper: [] });
          window.print = () => {
            const rows = [...document.querySelectorAll<HTMLTableRowElement>("#print tr")];
            const texts = rows.map((row) => [...row.cells].map(({ textContent }) => textContent));
            Object.assign(window, { paper: texts });
          };
        });
        await act("print", () => page.getByRole("button", { name: "Print", exact: true }).click());
        const paper = () => page.evaluate(() => (window as unknown as { paper: string[][] }).paper);
        await expect.poll(async () => (await paper()).length).toBeGreaterThan(0);
        return paper();
      },
      /** Waits until a cell of the shown sheet holds what it should. */
      shows: (address: string, is: (content: unknown) => boolean) =>
        expect.poll(async () => is(only(await readAll([address])))).toBe(true),
      /** A column's cells, once they are as they should be. */
      async column(
        letter: string,
        from: number,
        to: number,
        are: (cells: readonly unknown[]) => boolean,
      ) {
        const rows = Array.from({ length: to - from + 1 }, (_row, at) => from + at);
        const now = () => readAll(rows.map((row) => letter + row));
        await expect.poll(async () => are(await now())).toBe(true);
        return now();
      },
      /** How many actions it took, if nothing went wrong beside. */
      end(): number {
        expect(session.complaints.slice(before)).toEqual([]);
        return actions;
      },
    };
  }
});

const isFilled = (content: unknown) => content !== null && content !== undefined && content !== "";

/** What a bar of 20 kg weighs with these plates on each side: "25 + 5". */
const weightOf = (side: unknown) =>
  20 +
  2 *
    String(side)
      .split(" + ")
      .reduce((sum, plate) => sum + Number(plate), 0);

/** One value of the trend of one lifter's sets, worked out without a sheet. */
function trendOf(sets: readonly Row[], part: string): unknown[][] {
  const column = (at: number) => sets.map((set) => [set[at]]);
  const settings = Array.from({ length: 6 }, () => undefined);
  return implementations.STRENGTHTREND(column(0), column(3), column(4), column(5), ...settings, [
    [part],
  ]);
}
