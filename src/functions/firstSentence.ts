/**
 * A description's summary: up to the first full stop that ends a sentence, so not the one in "RPE 8.5". A question
 * alone tells too little, so the answer after it is in.
 */
export const firstSentence = (text: string): string => /^.*?\.(?=\s|$)/s.exec(text)?.[0] ?? text;
