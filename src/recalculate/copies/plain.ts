import type { Book } from "../book";
import type { Outcome } from "../calculate";
import { copyWith, type Copy } from "./copyWith";
import { judgeOf } from "./judge";

/** A copy with values in place of the formulas that use our functions, each formula in a note. */
export function plainCopy(book: Book, outcomes: readonly Outcome[]): Copy {
  return copyWith(
    book,
    outcomes,
    judgeOf(book, () => ({ lost: "a plain copy has none of the add-in's functions" })),
  );
}
