/** Names that are not plain English once their words are taken apart. */
const WORDS: Readonly<Record<string, string>> = {
  oneRepMax: "one-rep max",
  rpe: "RPE",
  sd: "SD",
  df: "degrees of freedom",
};

/** An argument's name as people say it: "repsToFailure" is "reps to failure", "sdBeforeA" is "SD before A". */
export function argumentWords(name: string): string {
  const known = WORDS[name];
  if (known !== undefined) return known;
  return name
    .split(/(?=[A-Z])/)
    .map((word, index, all) => {
      const isCrew = index > 0 && index === all.length - 1 && /^[AB]$/.test(word);
      return isCrew ? word : word.toLowerCase();
    })
    .map((word) => (word === "sd" ? "SD" : word))
    .join(" ");
}
