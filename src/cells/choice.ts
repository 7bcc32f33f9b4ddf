import { invalid, type CellError } from "./error";
import { quoted } from "./text";
import { HostError, type CellValue } from "./value";
import { passOn, shortNumber } from "./quantity";

/** The words a choice may be, as a TypeScript string enum: member name to the word in the cell. */
export type Choices = Readonly<Record<string, string>>;

/** The chosen word, case and outer blanks aside; `null` for a blank, or an error that lists the words. */
export function readChoice<C extends Choices>(
  value: CellValue,
  name: string,
  choices: C,
): C[keyof C] | null | CellError {
  if (value === null || value === 0) return null;
  if (value instanceof HostError) return passOn(value, name);
  const word = matchWord(String(value), Object.values(choices));
  if (word !== undefined) return word as C[keyof C];
  const found = typeof value === "number" ? shortNumber(value) : quoted(String(value));
  return invalid(`${name} is ${found}; expected ${listed(Object.values(choices))}`);
}

/** The word among `words` that this text is, case and outer blanks aside. */
export function matchWord(text: string, words: readonly string[]): string | undefined {
  const wanted = text.trim().toLowerCase();
  return words.find((word) => word.toLowerCase() === wanted);
}

/** Words as a message lists them: "a, b or c". */
export function listed(words: readonly string[]): string {
  const quotedWords = words.map((word) => `"${word}"`);
  const last = quotedWords.pop() ?? "";
  return quotedWords.length === 0 ? last : `${quotedWords.join(", ")} or ${last}`;
}
