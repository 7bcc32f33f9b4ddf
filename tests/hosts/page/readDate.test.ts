import { format } from "numfmt";
import { describe, expect, it } from "vitest";
import { dateReader } from "../../../src/hosts/page/dates/readDate";

const today = new Date(2026, 10, 26);

/** What a date typed in a browser of this language shows. */
function shown(language: string, text: string): string | null {
  const read = dateReader(language, today)(text);
  return read && format(read.z, read.v);
}

describe("a typed date", () => {
  it.each([
    ["en-GB", "5/1/2026", "5 Jan 2026"],
    ["en-US", "5/1/2026", "1 May 2026"],
    ["en-AU", "5/1/26", "5 Jan 2026"],
    ["de-DE", "5.1.2026", "5 Jan 2026"],
    ["fr-FR", "05/01/2026", "5 Jan 2026"],
    ["nl-NL", "5-1-2026", "5 Jan 2026"],
    ["ja-JP", "2026/1/5", "5 Jan 2026"],
    ["hu-HU", "26-1-5", "5 Jan 2026"],
  ])("is read in the order of its language: %s %s", (language, text, date) => {
    expect(shown(language, text)).toBe(date);
  });

  it("is the other way round where only that gives a date", () => {
    for (const language of ["en-US", "en-GB"]) {
      expect(shown(language, "26/1/2026")).toBe("26 Jan 2026");
      expect(shown(language, "1/26/2026")).toBe("26 Jan 2026");
      expect(shown(language, "31/2/2026")).toBeNull();
    }
  });

  it("is the same everywhere with the year first or the month as a word", () => {
    for (const language of ["en-US", "en-GB", "de-DE"]) {
      for (const text of ["2026-01-05", "2026/1/5", "5 Jan 2026", "Jan 5, 2026", "5-January-26"]) {
        expect(shown(language, text), text).toBe("5 Jan 2026");
      }
    }
    expect(shown("fr-FR", "5 janvier 2026")).toBe("5 Jan 2026");
  });

  it("may lack its year, and have a time of day", () => {
    expect(shown("en-GB", "5/1")).toBe("5 Jan 2026");
    expect(shown("en-US", "5/1")).toBe("1 May 2026");
    expect(shown("de-DE", "5.1.")).toBe("5 Jan 2026");
    expect(shown("en-GB", "5/1/2026 18:30")).toBe("5 Jan 2026 18:30");
    expect(shown("en-GB", "5 Jan 2026 6:30 pm")).toBe("5 Jan 2026 6:30 PM");
    expect(shown("en-GB", "Jan 2026")).toBe("Jan 2026");
  });
});

it.each(["8-10", "3-5", "5.1", "1 23", "100", "2.5", "5x5", "Bench", "3/4/5/6", "13/13/2026"])(
  "%s is no date",
  (text) => {
    for (const language of ["en-US", "en-GB", "de-DE"]) {
      expect(dateReader(language, today)(text), language).toBeNull();
    }
  },
);
