import { describe, expect, test } from "vitest";
import { findables } from "../../../src/pane/search/findable";
import { createSearch } from "../../../src/pane/search/search";
import { slipsBetween } from "../../../src/pane/search/spelling";
import { pictures } from "../../../src/pane/pictures";
import { paneData } from "../../ourSheets";

const data = paneData();
const { functions } = data.catalogue;
const items = findables(data);
const find = createSearch(items);
const search = (question: string) => find(question).map(({ id }) => id);

/** What people ask, in words that are not the phrases' own, and what they mean. */
const questions: [question: string, id: string][] = [
  ["how much for five reps with two left", "LOADFOR"],
  ["is this gain real", "CHANGESCORE"],
  ["what's my 1RM if I did 100 kg for 5", "E1RM"],
  ["estimate one rep maximum from a set", "E1RM"],
  ["how wrong can an estimated one rep max be", "E1RMBAND"],
  ["what percentage is six reps with one in reserve", "PERCENT1RM"],
  ["how many reps could she do with 80 kg", "REPSAT"],
  ["fit a personal curve for one athlete", "FITCURVE"],
  ["strength relative to bodyweight", "RELATIVESTRENGTH"],
  ["are we getting stronger over time", "STRENGTHTREND"],
  ["strength trend", "STRENGTHTREND"],
  ["who got stronger", "SQUADTREND"],
  ["which of my rowers improved their strength, all lifts", "SQUADTREND"],
  ["did we rise faster after we changed training", "RISECOMPARE"],
  ["which weight for 3 reps leaving 1", "LOADFOR"],
  ["the last set was too easy how much more", "NEXTLOAD"],
  ["round to 2.5 kg", "ROUNDLOAD"],
  ["chart of weights for my athlete", "LOADCHART"],
  ["percent chart", "PERCENTCHART"],
  ["convert rpe 9 to reps left", "RPETORIR"],
  ["turn two in reserve into an RPE", "RIRTORPE"],
  ["what plates go on each side for 120", "PLATES"],
  ["warmup sets", "WARMUPSETS"],
  ["warm up before squatting 150", "WARMUPSETS"],
  ["chance of making five reps at 100", "SETCHANCE"],
  ["reserve going down week by week", "RESERVETAPER"],
  ["write me a twelve week training plan", "BLOCKPLAN"],
  ["periodization", "BLOCKPLAN"],
  ["load of the plan in week 4 for each rower", "PLANWEEK"],
  ["compare planned and actual", "PLANCHECK"],
  ["tonnage", "VOLUMELOAD"],
  ["hard sets this week", "CLOSESETS"],
  ["how many sets does each muscle get", "MUSCLESETS"],
  ["summarise my training log by week", "LOGSUMMARY"],
  ["session rpe", "SESSIONLOAD"],
  ["monotony", "WEEKMONOTONY"],
  ["how straining was the week", "WEEKSTRAIN"],
  ["do my athletes call their RIR right", "RESERVECHECK"],
  ["they always have more in the tank than they say", "RESERVECHECK"],
  ["minimum detectable change", "MDC"],
  ["did this rower improve or is it test noise", "CHANGESCORE"],
  ["which of my rowers changed since the last test day", "SQUADCHANGE"],
  ["expected score on the next test day", "TESTTREND"],
  ["how trustworthy is our jump test", "RELIABILITY"],
  ["icc", "RELIABILITY"],
  ["smallest gain worth caring about", "SWC"],
  ["did my team get better from pre to post", "PAIREDCHANGE"],
  ["did the one group gain more than the other group", "GROUPCHANGE"],
  ["which of two training programs is better", "GROUPCHANGE"],
  ["results table of all the tests in a study", "TESTTABLE"],
  ["how many people improved by more than 2.5", "RESPONDERS"],
  ["responders 8 of 12 against 4 of 12", "RESPONDERDIFF"],
  ["are non-responders real", "RESPONSESHARE"],
  ["are both programs equally good", "EQUIVALENCE"],
  ["how many subjects do I need for my thesis", "SAMPLESIZE"],
  ["what difference can 10 per group detect", "DETECTABLE"],
  ["split my athletes in two fair groups", "BALANCEDGROUPS"],
  ["hedges g from mean and sd", "STUDYDIFF"],
  ["effect size of pre and post means in a paper with control group", "STUDYCHANGEDIFF"],
  ["sd of change scores not reported", "SDCHANGE"],
  ["sd from 95% confidence interval", "SDFROMCI"],
  ["standard error from confidence limits", "SEFROMCI"],
  ["meta analysis", "POOLSTUDIES"],
  ["pool the effects of five papers", "POOLSTUDIES"],
  ["does the result hang on one study", "LEAVEONEOUT"],
  ["do more sets bring more gains", "DOSERESPONSE"],
  ["meta regression", "DOSERESPONSE"],
  ["new study says otherwise, should I change what we do", "WORTHCHANGING"],
  ["which release should my paper cite", "VERSION"],
];

describe("the search in plain words", () => {
  test.each(questions)("%s: %s", (question, id) => {
    expect(search(question)[0]).toBe(id);
  });

  test("every function is asked for at least once above", () => {
    const asked = new Set(questions.map(([, id]) => id));
    expect(functions.map(({ id }) => id).filter((id) => !asked.has(id))).toEqual([]);
  });

  test("forgives a slip of the finger", () => {
    expect(search("realiability of a test")[0]).toBe("RELIABILITY");
    expect(search("warm-up wieghts")[0]).toBe("WARMUPSETS");
  });

  test("takes a word for the nearest one: a letter more or less, another one, two that changed places", () => {
    expect(slipsBetween("weight", "wieght", 2)).toBe(1);
    expect(slipsBetween("squat", "squatt", 2)).toBe(1);
    expect(slipsBetween("squat", "squt", 2)).toBe(1);
    expect(slipsBetween("bench", "banch", 2)).toBe(1);
    expect(slipsBetween("reliability", "relaibilitie", 2)).toBe(Infinity);
  });

  test("does not mind numbers, units and how sets are written", () => {
    for (const question of ["how heavy for 3x5 leaving 2", "how heavy for 5 × 3 leaving one"]) {
      expect(search(question)[0]).toBe("LOADFOR");
    }
    for (const question of ["round to 2.5 kg", "round to 5 lb", "round to 5lbs"]) {
      expect(search(question)[0]).toBe("ROUNDLOAD");
    }
  });

  test("finds a function by its name, whole or begun", () => {
    for (const { id } of functions) {
      expect(search(id)[0]).toBe(id);
      expect(search(id.toLowerCase())[0]).toBe(id);
    }
    expect(search("strengthtr")[0]).toBe("STRENGTHTREND");
  });

  test("finds nothing for words that mean nothing here, and for none", () => {
    expect(search("")).toEqual([]);
    expect(search("the of and")).toEqual([]);
    expect(search("xylophone")).toEqual([]);
  });
});

describe("ready sheets and pictures in the same box", () => {
  test("are all among what can be found, each as what it is", () => {
    expect(items.filter(({ kind }) => kind === "sheet").map(({ id }) => id)).toEqual(
      data.sheets.map(({ id }) => id),
    );
    expect(items.filter(({ kind }) => kind === "picture").map(({ id }) => id)).toEqual(
      pictures.map(({ id }) => id),
    );
  });

  test("come first by their names", () => {
    for (const { kind, id, name } of items) {
      if (kind !== "function") expect(search(`${name} ${kind}`)[0]).toBe(id);
    }
  });

  test("are meant where a question says so, and the function where it does not", () => {
    expect(search("meta analysis")[0]).toBe("POOLSTUDIES");
    expect(search("meta analysis sheet")[0]).toBe("studies");
    expect(search("meta analysis plot")[0]).toBe("forest");
  });
});

describe("the everyday phrases", () => {
  test("are at least four for everything that can be found", () => {
    for (const { id, phrases } of items) expect(phrases.length, id).toBeGreaterThanOrEqual(4);
  });

  test("each leads first to what it is said of", () => {
    const astray = items.flatMap(({ id, phrases }) =>
      phrases.filter((phrase) => search(phrase)[0] !== id).map((phrase) => `${id}: ${phrase}`),
    );
    expect(astray).toEqual([]);
  });
});
