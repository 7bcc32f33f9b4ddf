/**
 * Text as a message may show it. Cells, sheets and files come from anywhere, and what is in them can drive a terminal
 * (control characters), break a line or turn its direction: such characters are shown as `\u001b`.
 */
export const visible = (text: string): string =>
  text.replace(UNSEEN, (character) => SHORT_FORMS[character] ?? codeOf(character));

const SHORT_FORMS: Readonly<Record<string, string>> = { "\n": "\\n", "\r": "\\r", "\t": "\\t" };

const codeOf = (character: string) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`;

// Control characters, halves of characters, separators of lines, and marks that turn the direction of text.
const UNSEEN = /[\p{Cc}\p{Cs}\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/gu;
