import MiniSearch from "minisearch";
import type { CatalogueFunction } from "../../functions/catalogue";
import type { Phrases } from "../data";
import { pairsOf, wordsOf } from "./words";

/** Answers a question in plain words with the ids of functions, the likeliest first. */
export type Search = (question: string) => string[];

/** What is this much less close than the best answer is no answer. */
const FAR = 0.15;

interface Entry {
  /** A number to keep entries apart. */
  readonly id: number;
  readonly function: string;
  readonly name: string;
  readonly phrase: string;
  readonly about: string;
  /** How many words it could match; what a function says about itself is not held to all of its words. */
  readonly length: number;
}

/**
 * Makes the search over a catalogue. Every phrase is an entry of its own, so that a question is held
 * against one whole way of asking, not against a heap of words from all of them; what the function
 * says about itself is one entry more.
 */
export function createSearch(functions: readonly CatalogueFunction[], phrases: Phrases): Search {
  const index = new MiniSearch<Entry>({
    fields: ["name", "phrase", "about"],
    storeFields: ["function", "length"],
    tokenize: (text) => [...wordsOf(text), ...pairsOf(text)],
    // The words come from `wordsOf` in their final form.
    processTerm: (word) => word,
    searchOptions: {
      boost: { name: 6, phrase: 2, about: 1 },
      prefix: (word) => word.length > 2 && !word.includes(">"),
      fuzzy: (word) => (word.length > 4 && !word.includes(">") ? 0.2 : false),
      weights: { fuzzy: 0.35, prefix: 0.6 },
    },
  });
  index.addAll(entriesOf(functions, phrases));

  return (question) => {
    const asked = new Set(wordsOf(question)).size;
    const best = new Map<string, number>();
    for (const result of index.search(question)) {
      const id = result.function as string;
      // Of two phrases with the same rare word, the one that says more of what was asked, and less
      // else, is the closer one.
      const said = wordsAmong(result.queryTerms) / asked;
      const meant = Math.min(1, wordsAmong(result.terms) / (result.length as number));
      const closeness = result.score * said * meant ** 0.2;
      best.set(id, Math.max(best.get(id) ?? 0, closeness));
    }
    const ranked = [...best].sort(([, a], [, b]) => b - a);
    const enough = FAR * (ranked[0]?.[1] ?? 0);
    return ranked.filter(([, closeness]) => closeness >= enough).map(([id]) => id);
  };
}

const wordsAmong = (terms: readonly string[]) =>
  new Set(terms.filter((term) => !term.includes(">"))).size;

/** So many words of what a function says about itself are all that can be asked of a question. */
const ENOUGH = 12;

function entriesOf(functions: readonly CatalogueFunction[], phrases: Phrases): Entry[] {
  const rows = functions.flatMap((entry) => [
    { function: entry.id, name: entry.id, phrase: "", about: "", length: 1 },
    { function: entry.id, name: "", phrase: "", about: aboutOf(entry), length: ENOUGH },
    ...(phrases[entry.id] ?? []).map((phrase) => ({
      function: entry.id,
      name: "",
      phrase,
      about: "",
      length: new Set(wordsOf(phrase)).size,
    })),
  ]);
  return rows.map((row, id) => ({ id, ...row }));
}

function aboutOf({ description, family, parameters, source }: CatalogueFunction): string {
  const names = parameters.map(({ name }) => name.replace(/([A-Z])/g, " $1"));
  return [description, family, ...names, source].join(" ");
}
