import { visible } from "../cells/visible";
import type { Saying } from "./arguments";
import { STANDARD, type Pieces } from "./files";
import type { Screen } from "./progress";
import { writeJson } from "./report";

/** Where a result as well as a report can go. */
export interface Output extends Screen {
  write(text: string | Uint8Array): unknown;
}

/** Where the command line talks to: its standard input, output and error. */
export interface Terminal {
  readonly in: Pieces;
  readonly out: Output;
  readonly err: Screen;
}

/** What a run says of what it did: for a person, and for programs. */
export interface Said {
  readonly text: string;
  /** Made only where it is asked for: of a long log it is longer than the log. */
  readonly json: () => object;
}

/** Says one thing, as it was asked for: to standard error where the result itself goes to standard output. */
export function say({ text, json }: Said, saying: Saying, terminal: Terminal, target?: string) {
  if (saying.quiet) return;
  const screen = target === STANDARD ? terminal.err : terminal.out;
  screen.write(`${saying.json ? writeJson(json()) : text}\n`);
}

/** One line on standard error, with nothing in it that a terminal would obey. */
export function complain(line: string, terminal: Terminal): void {
  terminal.err.write(`spare: ${visible(line)}\n`);
}
