import { expect, it } from "vitest";
import { compareBooks } from "../bench/books/compare";
import { booksFrom } from "../bench/randomBooks";
import { functions } from "../functions/catalogue";
import { seed } from "../random";

const BOOKS = 20;

/** `npm run bench` does the same with 1,000; `npx tsx tests/bench/randomBooks.ts SEED BOOK` makes one book again. */
it(
  "gives in random workbooks what the functions give, and leaves the rest",
  { timeout: 120_000 },
  async () => {
    const { differences, values, called, ours, errors } = await compareBooks(
      seed,
      booksFrom(0, BOOKS - 1),
    );
    expect(differences).toEqual([]);
    // Every function has its turn, and most of what they give are results.
    expect(called.size).toBe(functions.length);
    expect(values).toBeGreaterThan(BOOKS * 300);
    expect(errors).toBeLessThan(ours / 2);
  },
);
