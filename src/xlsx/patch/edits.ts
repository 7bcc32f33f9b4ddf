import type { Place } from "../read/rows";

/** A stretch of a part's text. */
export type Stretch = Omit<Place, "contentStart">;

/** A stretch of text and what comes in its place; an insertion is a stretch of no length. */
export interface Edit extends Stretch {
  readonly text: string;
}

/** Makes edits that do not overlap; insertions come before what starts at their place. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  const pieces: string[] = [];
  let at = 0;
  const inOrder = [...edits].sort((one, other) => one.start - other.start || one.end - other.end);
  for (const edit of inOrder) {
    pieces.push(text.slice(at, edit.start), edit.text);
    at = edit.end;
  }
  return pieces.join("") + text.slice(at);
}
