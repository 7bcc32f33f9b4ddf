import { CellError, type Content } from "../../cells";
import { call } from "../../library/call";

/** What a warehouse gets back of a cell: its value, or the error that a sheet would show with its message. */
export type Answered = number | string | { readonly error: string; readonly message: string };

/** Computes a cell function on arguments that came as a warehouse has them, with null for a blank: rows of cells. */
export const answer = (id: string, args: readonly unknown[]): Answered[][] =>
  call(id, args).map((row) => row.map(answered));

/** The same for arguments that came as JSON, as JSON. */
export const answerJson = (id: string, args: string): string =>
  JSON.stringify(answer(id, JSON.parse(args) as unknown[]));

const answered = (content: Content): Answered =>
  content instanceof CellError ? { error: content.code, message: content.message } : content;
