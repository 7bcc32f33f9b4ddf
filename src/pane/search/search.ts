import type { Findable } from "./findable";
import { readQuestion, type Asked, type Question } from "./question";
import { expressionStems, NUMBER, pairsOf, stemsOf, termOf, termsOf } from "./words";

/** Answers a question in plain words with what the pane has to offer, the likeliest first. */
export type Search = (question: string) => Findable[];

/** What is this much less close than the best answer is no answer. */
const FAR = 0.3;

/** What something says about itself is not how it is asked for. */
const ABOUT = 0.3;

/** So far a phrase that says much else beside what was asked is marked down: its share of that, to this power. */
const ELSE = 0.3;

/** What words in the order of the question add. */
const IN_ORDER = 0.3;

/** What it adds that the question is the name itself. */
const NAMED = 0.1;

/** What all phrases together count beside the one that fits best. */
const TOGETHER = 1.2;

/** A term in one phrase counts 1 / (1 + 0.6), in many it counts nearly 1. */
const SATED = 0.6;

/** A term that stands in one phrase alone may stand there by chance: it tells no more than one that a tenth answers to. */
const RAREST = 2;

/** A number says little. */
const NUMBER_TELLS = 0.3;

/** Where a question says "graph" or "sheet", other kinds are less meant; where it says neither, a function is meant a little more. */
const OTHER_KIND = 0.8;
const UNNAMED_KIND = 0.92;

/** The term that every sheet and every picture answers to, whatever its phrases say. */
const kindTerms: Readonly<Record<Findable["kind"], string | undefined>> = {
  function: undefined,
  sheet: termOf("sheet"),
  picture: termOf("picture"),
};

/** One way of asking for something, or what it says about itself. */
interface Entry {
  readonly of: "name" | "phrase" | "about";
  readonly terms: ReadonlySet<string>;
  readonly pairs: ReadonlySet<string>;
}

interface Place {
  readonly item: Findable;
  readonly entries: readonly Entry[];
  /** In how many phrases each term stands; what something says about itself counts for less. */
  readonly often: ReadonlyMap<string, number>;
}

/**
 * Makes the search over all that can be found. A question is held against each way of asking on its own,
 * so that it must fit one of them and not a heap of their words, and then against all of them together.
 * A rare term tells more than one that many things answer to.
 */
export function createSearch(items: readonly Findable[]): Search {
  const places = items.map(placeOf);
  const known = new Set([...expressionStems, ...items.flatMap(textsOf).flatMap(stemsOf)]);
  const tells = tellingOf(places);

  return (text) => {
    const question = readQuestion(text, known);
    const words = question.asked
      .map(({ options }) => ({ options, tells: tellsOf({ options }, tells) }))
      .filter((word) => word.tells > 0);
    if (words.length === 0) return [];
    const ranked = places
      .filter(({ often }) => words.some(({ options }) => hasAny(often, options)))
      .map((place) => ({
        item: place.item,
        closeness:
          kindFactor(place.item, question) * closenessOf(place, words, question.pairs, tells),
      }))
      .sort((a, b) => b.closeness - a.closeness);
    const enough = FAR * (ranked[0]?.closeness ?? 0);
    return ranked
      .filter(({ closeness }) => closeness > 0 && closeness >= enough)
      .map(({ item }) => item);
  };
}

const textsOf = ({ name, about, phrases }: Findable) => [name, about, ...phrases];

function placeOf(item: Findable): Place {
  const entries = [
    entryOf(item.name, "name"),
    ...item.phrases.map((phrase) => entryOf(phrase, "phrase")),
    entryOf(item.about, "about"),
  ];
  const often = new Map<string, number>();
  const kind = kindTerms[item.kind];
  if (kind !== undefined) often.set(kind, entries.length);
  for (const { terms, of } of entries) {
    for (const term of terms)
      often.set(term, (often.get(term) ?? 0) + (of === "about" ? ABOUT : 1));
  }
  return { item, entries, often };
}

function entryOf(text: string, of: Entry["of"]): Entry {
  const terms = termsOf(stemsOf(text));
  return { terms: new Set(terms), pairs: new Set(pairsOf(terms)), of };
}

/** How much each term tells: the fewer things answer to it, the more. */
type Tells = (term: string) => number;

function tellingOf(places: readonly Place[]): Tells {
  const answering = new Map<string, number>();
  for (const { often } of places) {
    for (const term of often.keys()) answering.set(term, (answering.get(term) ?? 0) + 1);
  }
  const telling = new Map(
    [...answering].map(([term, count]) => {
      const rare = Math.log(1 + (places.length - count + 0.5) / (count + 0.5));
      return [term, term === NUMBER ? NUMBER_TELLS : Math.min(RAREST, rare)];
    }),
  );
  return (term) => telling.get(term) ?? 0;
}

/** What an asked word tells: the term itself, or, where nothing answers to that, the commonest it may stand for. */
function tellsOf({ options }: Pick<Asked, "options">, tells: Tells): number {
  const [own = 0, ...others] = [...options.keys()].map(tells);
  if (own > 0) return own;
  const known = others.filter((each) => each > 0);
  return known.length > 0 ? Math.min(...known) : 0;
}

/** A word of a question: the terms it may stand for, each with the trust in that, and what it tells. */
interface Word {
  readonly options: Asked["options"];
  readonly tells: number;
}

/** Whether any term that a word may stand for is there at all. */
function hasAny(there: ReadonlyMap<string, unknown>, options: Asked["options"]): boolean {
  for (const term of options.keys()) if (there.has(term)) return true;
  return false;
}

/** How close what is offered comes to the question: by the way of asking that fits best, and by all of them together. */
function closenessOf(
  place: Place,
  words: readonly Word[],
  pairs: Question["pairs"],
  tells: Tells,
): number {
  const whole = words.reduce((sum, word) => sum + word.tells, 0);
  const kind = kindTerms[place.item.kind];

  let best = 0;
  for (const entry of place.entries) {
    let met = 0;
    const meeting = new Map<string, number>();
    for (const word of words) {
      const [term, trust] = bestOf(word.options, (each) =>
        entry.terms.has(each) || each === kind ? 1 : 0,
      );
      met += trust * word.tells;
      if (entry.terms.has(term)) meeting.set(term, Math.max(trust, meeting.get(term) ?? 0));
    }
    if (met === 0) continue;
    const rest = notElse(entry, meeting, tells);
    const isNamed = entry.of === "name" && met === whole && rest === 1;
    const inOrder =
      pairs.filter((pair) => entry.pairs.has(pair)).length / Math.max(1, pairs.length);
    const close = (met / whole) * rest ** ELSE + IN_ORDER * inOrder + (isNamed ? NAMED : 0);
    best = Math.max(best, (entry.of === "about" ? ABOUT : 1) * close);
  }

  const together = words.reduce((sum, word) => {
    const [, trust] = bestOf(word.options, (term) => {
      const often = place.often.get(term) ?? 0;
      return often / (often + SATED);
    });
    return sum + trust * word.tells;
  }, 0);
  return best + (TOGETHER * together) / whole;
}

/** Of the terms that a word may stand for, the one that is there and counts most. */
function bestOf(
  options: ReadonlyMap<string, number>,
  there: (term: string) => number,
): [term: string, trust: number] {
  let best: [string, number] = ["", 0];
  for (const [term, trust] of options) {
    const counts = trust * there(term);
    if (counts > best[1]) best = [term, counts];
  }
  return best;
}

/** How much of a phrase was asked for, by what its terms tell; what something says about itself is not held to it. */
function notElse(entry: Entry, meeting: ReadonlyMap<string, number>, tells: Tells): number {
  if (entry.of === "about") return 0.5;
  const sum = (terms: Iterable<[string, number]>) =>
    [...terms].reduce((total, [term, trust]) => total + trust * tells(term), 0);
  return Math.max(0.1, sum(meeting) / sum([...entry.terms].map((term) => [term, 1])));
}

/** How a question's own word for a kind, "graph" or "sheet", speaks for or against an answer. */
function kindFactor({ kind }: Findable, { asked }: Question): number {
  const term = kindTerms[kind];
  const named = asked.map((word) => word.term).filter((each) => isKindTerm.has(each));
  if (named.length > 0) return term !== undefined && named.includes(term) ? 1 : OTHER_KIND;
  return term === undefined ? 1 : UNNAMED_KIND;
}

const isKindTerm = new Set(Object.values(kindTerms).flatMap((term) => term ?? []));
