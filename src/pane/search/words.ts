/**
 * The words of a question that say what it is about, in a form in which "five reps", "5 reps" and
 * "a rep" meet.
 */
export function wordsOf(text: string): string[] {
  const words = text
    .toLowerCase()
    .replace(/[’']s?\b/g, "")
    .match(/[\p{L}\p{N}.]+/gu);
  return (words ?? []).map((word) => word.replace(/^\.+|\.+$/g, "")).flatMap(wordForm);
}

/** The form under which a word is looked up: one, or none for a word that says nothing. */
function wordForm(word: string): string[] {
  if (word === "" || SILENT.has(word)) return [];
  const same = Object.hasOwn(SAME, word) ? SAME[word] : undefined;
  if (same !== undefined) return [same];
  return [/^\d/.test(word) || NUMBERS.has(word) ? NUMBER : stem(word)];
}

/** Which word follows which: "reserve to RPE" is not "RPE to reserve". Numbers in between do not part them. */
export function pairsOf(text: string): string[] {
  const words = wordsOf(text).filter((word) => word !== NUMBER);
  return words.slice(1).map((word, index) => `${words[index]}>${word}`);
}

/** Any number: which one makes no difference to the function that is meant. */
const NUMBER = "number";

const NUMBERS = new Set(
  "one two three four five six seven eight nine ten eleven twelve twenty half".split(" "),
);

const SILENT = new Set(
  (
    "a an the of for in on at by to from with and or as is are was were be been am it its i me my " +
    "we us our you your he she his her they them their this that these those what which who do " +
    "does did can could should would will im just really if there than then so any some please get got"
  ).split(" "),
);

/** Words that mean the same here. */
const SAME: Readonly<Record<string, string>> = {
  rir: "reserve",
  left: "reserve",
  tank: "reserve",
  weight: "load",
  heavy: "load",
  kg: "load",
  kilo: "load",
  kilos: "load",
  pounds: "load",
  lb: "load",
  lbs: "load",
  maximum: "max",
  "1rm": "max",
  e1rm: "max",
  repetition: "rep",
  repetitions: "rep",
  percent: "percentage",
  percents: "percentage",
  intensity: "percentage",
  athletes: "athlete",
  lifter: "athlete",
  lifters: "athlete",
  rower: "athlete",
  rowers: "athlete",
  player: "athlete",
  players: "athlete",
  subjects: "athlete",
  participants: "athlete",
  people: "athlete",
  gain: "change",
  gains: "change",
  gained: "change",
  improve: "change",
  improved: "change",
  improvement: "change",
  progress: "change",
  periodised: "periods",
  periodized: "periods",
  periodisation: "periods",
  periodization: "periods",
  mesocycle: "block",
  leaving: "reserve",
  stronger: "strength",
  strong: "strength",
  programme: "plan",
  programmes: "plan",
  program: "plan",
  programs: "plan",
  noise: "error",
  wobble: "error",
  diary: "log",
  journal: "log",
  tonnage: "volume",
  teams: "group",
  team: "group",
  squads: "squad",
  paper: "study",
  papers: "study",
  trials: "trial",
  studies: "study",
  "meta-analysis": "meta",
  halves: "half",
  pre: "before",
  post: "after",
  ci: "interval",
  se: "error",
};

/** Takes the ending off: "sets" and "set", "loading" and "load", "rounded" and "round". */
function stem(word: string): string {
  if (word.length > 5 && word.endsWith("ing")) return word.slice(0, -3);
  if (word.length > 4 && word.endsWith("ies")) return `${word.slice(0, -3)}y`;
  if (word.length > 5 && word.endsWith("ed")) return word.slice(0, -2);
  if (word.length > 3 && word.endsWith("s") && !word.endsWith("ss")) return word.slice(0, -1);
  return word;
}
