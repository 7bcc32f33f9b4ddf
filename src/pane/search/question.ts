import { readWord, type Meant } from "./spelling";
import { NEAR } from "./synonyms";
import { pairsOf, stemsOf, termOf, termsOf } from "./words";

/** A question, read: what it asks for, and in which order. */
export interface Question {
  readonly asked: readonly Asked[];
  readonly pairs: readonly string[];
}

/** A word of a question: the terms it may stand for, and how much each then counts. */
export interface Asked {
  readonly term: string;
  readonly options: ReadonlyMap<string, number>;
}

/** So much counts a word that is only near what was asked. */
const NEAR_BY = 0.5;

/** Reads a question with the words that are known; typed ones that are not are taken for the nearest. */
export function readQuestion(text: string, known: ReadonlySet<string>): Question {
  const typed = stemsOf(text).map((stem) => [stem, readWord(stem, known)] as const);
  // Only a word that can be read in one way can be part of an expression.
  const read = new Map(typed.map(([stem, meant]) => [oneReading(stem, meant), meant]));
  const terms = termsOf(typed.map(([stem, meant]) => oneReading(stem, meant)));
  const asked = [...new Set(terms)].map((term) => ({ term, options: optionsOf(term, read) }));
  return { asked, pairs: pairsOf(terms) };
}

const oneReading = (stem: string, { words: [word = stem, ...others] }: Meant) =>
  others.length === 0 ? word : stem;

function optionsOf(term: string, read: ReadonlyMap<string, Meant>): Map<string, number> {
  const { words, trust } = read.get(term) ?? { words: [term], trust: 1 };
  const options = new Map(
    words.length > 1
      ? words.flatMap((word) => termsOf([word]).map((each) => [each, trust]))
      : [[term, trust]],
  );
  for (const option of [...options.keys()]) {
    for (const other of neighbours.get(option) ?? []) {
      if (!options.has(other)) options.set(other, trust * NEAR_BY);
    }
  }
  return options;
}

const neighbours = new Map<string, string[]>();
for (const line of NEAR.map((words) => words.map(termOf))) {
  for (const term of line) neighbours.set(term, [...(neighbours.get(term) ?? []), ...line]);
}
