import { elementAt } from "../../present";

/** Numbers from 0 up to 1, as Math.random gives them. */
export type Random = () => number;

/** What a cell may hold, an error by its code. */
export type Content = number | string | boolean | null;

/** One of these, each as likely as any other. */
export const pick =
  (...contents: readonly Content[]) =>
  (random: Random): Content =>
    elementAt(contents, Math.floor(random() * contents.length));

/** A number from `low` up to `high`, in steps. */
export const between =
  (low: number, high: number, step = 0.5) =>
  (random: Random): number =>
    low + step * Math.floor((random() * (high - low)) / step);
