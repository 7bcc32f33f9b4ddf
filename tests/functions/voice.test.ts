import { describe, expect, it } from "vitest";
import { allMessages } from "./voice";

/* Messages speak with one voice: in lower case, the argument first, what it is, and what was expected. */

/** Refusals that pass on an error of the sheet's own, or say all there is to say. */
const COMPLETE = [/ holds …/, /^…: …$/, /^…, or /, /shares but no exercise$/, /a second time$/];

describe("every message", () => {
  it("is found", () => {
    const count = (kind: string) => allMessages.filter((message) => message.kind === kind).length;
    expect(count("refusal")).toBeGreaterThan(60);
    expect(count("no answer")).toBeGreaterThan(40);
  });

  it("starts in lower case and ends without a full stop", () => {
    const loud = allMessages.filter(
      ({ text }) => !/^([a-z…]|SD\b)/.test(text) || /[.!]$/.test(text),
    );
    expect(loud).toEqual([]);
  });

  it("says what was expected where it refuses something", () => {
    const short = allMessages.filter(
      ({ kind, text }) =>
        kind === "refusal" &&
        !text.includes("expected ") &&
        !COMPLETE.some((complete) => complete.test(text)),
    );
    expect(short.map(({ file, text }) => `${file}: ${text}`)).toEqual([]);
  });

  it("orders nobody about", () => {
    const bossy = allMessages.filter(({ text }) =>
      /\b(must|please|should|invalid|error:)/i.test(text),
    );
    expect(bossy).toEqual([]);
  });
});
