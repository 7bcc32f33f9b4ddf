import { describe, expect, test } from "vitest";
import { findables, type Findable } from "../../../src/pane/search/findable";
import { createSearch } from "../../../src/pane/search/search";
import heldOut from "../../../shared/pane/questions/held-out.json";
import practice from "../../../shared/pane/questions/practice.json";
import frozen from "../../../shared/pane/questions/frozen.json";
import { paneData } from "../../ourSheets";

const data = paneData();
const items = findables(data);
const search = createSearch(items);

type Questions = readonly (readonly [question: string, answers: readonly string[]])[];

const asQuestions = (list: Readonly<Record<string, string | string[]>>): Questions =>
  Object.entries(list).map(([question, answer]) => [question, [answer].flat()]);

const sheetNames = new Map(data.sheets.map(({ id, sheet }) => [id, sheet.name]));

/** How the lists of questions call what can be found. */
function called({ kind, id, name }: Findable): string {
  if (kind === "function") return id;
  return kind === "sheet" ? `sheet: ${sheetNames.get(id)}` : `picture: ${name}`;
}

/** The shares answered first and among the first three, and which questions were not. */
function measure(questions: Questions) {
  const found = questions.map(([question, answers]) => {
    const at = search(question)
      .map(called)
      .findIndex((each) => answers.includes(each));
    return { question, place: at < 0 ? Infinity : at };
  });
  const within = (places: number) => found.filter(({ place }) => place < places);
  return {
    first: within(1).length / found.length,
    inThree: within(3).length / found.length,
    missed: found.filter(({ place }) => place > 0).map(({ question }) => question),
  };
}

function expectShares(questions: Questions, first: number, inThree: number): void {
  const measured = measure(questions);
  expect(measured.first, measured.missed.join("\n")).toBeGreaterThanOrEqual(first);
  expect(measured.inThree, measured.missed.join("\n")).toBeGreaterThanOrEqual(inThree);
}

test("every answer of the lists is there to be found", () => {
  const there = new Set(items.map(called));
  const answers = [frozen, practice, heldOut].flatMap((list) => Object.values(list).flat());
  expect(answers.filter((answer) => !there.has(answer))).toEqual([]);
});

describe("the frozen questions", () => {
  const questions = asQuestions(frozen);

  test("are more than 200, every function in three or more, sheets and pictures in every seventh", () => {
    expect(questions.length).toBeGreaterThanOrEqual(200);
    for (const { id } of data.catalogue.functions) {
      expect(questions.filter(([, answers]) => answers.includes(id)).length, id).toBeGreaterThan(2);
    }
    const ofOtherKinds = questions.filter(([, answers]) => /^(sheet|picture): /.test(answers[0]!));
    expect(ofOtherKinds.length / questions.length).toBeGreaterThan(1 / 7);
  });

  test("95% are answered first and 99% in the first three", () => {
    expectShares(questions, 0.95, 0.99);
  });

  test("are not among the phrases, but for terms of the trade and names", () => {
    const plain = (text: string) =>
      text
        .toLowerCase()
        .replace(/[^\p{L}\p{N}]+/gu, " ")
        .trim();
    const phrases = new Set(items.flatMap((item) => item.phrases.map(plain)));
    const pasted = questions
      .map(([question]) => plain(question))
      .filter((each) => phrases.has(each));
    expect(pasted.filter((each) => each.split(" ").length > 5)).toEqual([]);
  });
});

describe("questions that the search was not made for", () => {
  test("of the practice lists 85% are answered first and 93% in the first three", () => {
    expectShares(asQuestions(practice), 0.85, 0.93);
  });

  test("of the held-out list 80% are answered first and 92% in the first three", () => {
    expectShares(asQuestions(heldOut), 0.8, 0.92);
  });
});
