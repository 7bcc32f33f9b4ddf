import { SAME } from "./synonyms";

/**
 * The words of a text in lower case and without their endings, numbers and units apart: "100kg x 5"
 * is a number, kilograms, reps and a number.
 */
export function stemsOf(text: string): string[] {
  const words = text
    .toLowerCase()
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/[’']s?\b/g, "")
    .replace(/(\d)\s*(?:of|out of|\/)\s*(?=\d)/g, "$1 proportion ")
    .replace(/(\d\s*(?:kgs?|lbs?)?)\s*[x×]\s*(?=\d)/g, "$1 rep ")
    .replace(ASKED_FOR, "$2 $1")
    .replace(/%/g, " percent ")
    .replace(/@/g, " rpe ")
    .replace(/(\d)(?!rm)(?=\p{L})/gu, "$1 ")
    .match(/\d*[.,]?\d+(?:rm)?|\p{L}+\d*(?:rm)?/gu);
  return (words ?? []).map(stem);
}

/** "What RPE is two left" asks the same as "two left is what RPE": what is given comes first, what is asked for last. */
const ASKED_FOR = /\b(?:what|which)\s+(\w+)\s+(?:is|are|fits?)\s+(.+)$/;

/** The ending off: "sets" and "set", "loading" and "load", "planned" and "plan", "changes" and "change". */
function stem(word: string): string {
  if (/^\d+rm$/.test(word)) return word === "1rm" ? word : "repmax";
  if (/^\d/.test(word) || NUMBERS.has(word)) return NUMBER;
  if (/^\p{L}{3,}\d+$/u.test(word)) return word.replace(/\d+$/, "");
  if (/\d/.test(word) || word.length < 4) return word;
  const bare = word
    .replace(/(?<=..)ies$/, "y")
    .replace(/(?<=[^s])s$/, "")
    .replace(/(?<=[aeiouy].*)(?:ing|ed|ly)$/, "")
    .replace(/([^aeiouylsf])\1$/, "$1")
    .replace(/(?<=...)e$/, "");
  return bare.length < 3 ? word : bare;
}

/** Any number: which one makes no difference to what is meant. */
export const NUMBER = "#";

const NUMBERS = new Set(
  "one two three four five six seven eight nine ten eleven twelve twenty half".split(" "),
);

/** The words as terms: one for all expressions that mean the same, and none for words that say nothing. */
export function termsOf(stems: readonly string[]): string[] {
  const terms: string[] = [];
  for (let at = 0; at < stems.length;) {
    const [term, length] = expressionAt(stems, at);
    if (!silent.has(term)) terms.push(term);
    at += length;
  }
  return terms;
}

/** The one term of a word or an expression. */
export const termOf = (expression: string) => termsOf(stemsOf(expression)).join("");

/** Which term follows which: "reserve to RPE" is not "RPE to reserve". Numbers in between do not part them. */
export function pairsOf(terms: readonly string[]): string[] {
  const words = terms.filter((word) => word !== NUMBER);
  return words.slice(1).map((word, index) => `${words[index]}>${word}`);
}

/** The longest expression that begins here, as the term that stands for it, and its length in words. */
function expressionAt(stems: readonly string[], at: number): [term: string, length: number] {
  for (let length = Math.min(longest, stems.length - at); length > 1; length--) {
    const term = expressions.get(stems.slice(at, at + length).join(" "));
    if (term !== undefined) return [term, length];
  }
  const word = stems[at] ?? "";
  return [expressions.get(word) ?? word, 1];
}

const expressions = new Map(
  [...SAME].flatMap(([word, others]) =>
    [word, ...others].map((each) => [stemsOf(each).join(" "), stemsOf(word).join("")] as const),
  ),
);
const longest = Math.max(...[...expressions.keys()].map((each) => each.split(" ").length));

/** Every single word that an expression is made of: it is spelled right, though no phrase may have it. */
export const expressionStems: ReadonlySet<string> = new Set(
  [...expressions.keys()].flatMap((each) => each.split(" ")),
);

const silent = new Set(
  stemsOf(
    "a an the of for in on at by to from with and or as is are was were be been am it its we us our " +
      "you your they them their this that these those what which do does did can could should would " +
      "will per just if there than then so any some please get got go goes going want",
  ),
);
