import { pathToFileURL } from "node:url";
import { compareBooks } from "./books/compare";

const BOOKS = 1000;

/**
 * Random valid workbooks through `calc`, `plain` and `portable`, in one process, beside the functions called directly.
 *
 * `npx tsx tests/bench/randomBooks.ts SEED` makes the books of a seed again; with a number behind it that one of them, and
 * with two numbers those from the first to the second.
 */
export async function benchRandomBooks(seed: number, numbers: Iterable<number>): Promise<void> {
  console.log(`\nRandom workbooks through calc, plain and portable, SEED=${seed}`);
  const { differences, called, slowest, megabytes, ...counts } = await compareBooks(seed, numbers);
  console.table([
    {
      ...counts,
      functions: called.size,
      differences: differences.length,
      "slowest ms": Math.round(slowest.milliseconds),
      slowest: slowest.where,
      MB: Math.round(megabytes),
    },
  ]);
  for (const difference of differences.slice(0, 50)) console.log(difference);
}

export const booksFrom = (first = 0, last = first) =>
  Array.from({ length: last - first + 1 }, (_, at) => first + at);
export const everyBook = () => booksFrom(0, BOOKS - 1);
export const freshSeed = () => Number(process.env.SEED ?? Date.now() % 1_000_000);

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const [seed = freshSeed(), first, last] = process.argv.slice(2).map(Number);
  await benchRandomBooks(seed, first === undefined ? everyBook() : booksFrom(first, last));
}
