/**
 * What the spreadsheet's text layout asks of `cjk-regex`: which characters are Chinese, Japanese or
 * Korean ones. That package works it out from tables of all of Unicode, half a megabyte; browsers
 * have known the same by heart since 2018.
 */

/** What is written between such letters, by the blocks of Unicode that hold it. */
const PUNCTUATION =
  "\\u2ff0-\\u2fff\\u3000-\\u303f\\u30a0-\\u30ff\\u3190-\\u319f\\u31c0-\\u31ef\\u3200-\\u33ff" +
  "\\ufe10-\\ufe1f\\ufe30-\\ufe6f\\uff00-\\uffef";

const LETTER =
  "\\p{Script=Han}\\p{Script=Katakana}\\p{Script=Hiragana}\\p{Script=Hangul}\\p{Script=Bopomofo}";

const anyOf = (characters: string) => ({
  toRegExp: () => new RegExp(`[${characters}]`, "u"),
});

export const letters = () => anyOf(LETTER);
export const punctuations = () => ({
  toRegExp: () => new RegExp(`(?![${LETTER}])[${PUNCTUATION}]`, "u"),
});
export const all = () => anyOf(LETTER + PUNCTUATION);
