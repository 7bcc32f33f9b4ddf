import { parseArgs } from "node:util";
import {
  COMMANDS,
  commandNames,
  isCommand,
  OPTIONS,
  optionsOf,
  SHELLS,
  type CommandName,
  type OptionForm,
  type OptionName,
  type Shell,
} from "./commands";
import { BadUsage } from "./problem";

/** What is typed on the command line, taken apart. */
export type Arguments = (
  | HelpArguments
  | VersionArguments
  | CompletionArguments
  | ValueArguments
  | CalcArguments
  | TableArguments
  | CardsArguments
  | CopyArguments
) &
  Saying;

/** How much is said of what was done, and to whom. */
export interface Saying {
  readonly json: boolean;
  readonly quiet: boolean;
}

export interface HelpArguments {
  readonly command: "help";
  readonly about: CommandName | undefined;
}

export interface VersionArguments {
  readonly command: "version";
}

export interface CompletionArguments {
  readonly command: "completion";
  readonly shell: Shell;
}

export interface ValueArguments extends Saying {
  readonly command: "value";
  readonly formula: string;
  readonly csv: boolean;
  readonly timeout: number | undefined;
}

/** What all commands that take workbooks have. */
export interface BooksArguments extends Saying {
  /** The files, at least one; "-" is standard input. */
  readonly inputs: readonly string[];
  /** How many seconds a workbook may take to compute; as long as it takes where nothing is said. */
  readonly timeout: number | undefined;
  /** Whether to write nothing, wherever the result would go. */
  readonly dryRun: boolean;
}

export interface CopyArguments extends BooksArguments {
  readonly command: "plain" | "portable";
  readonly output: string;
}

export interface CalcArguments extends BooksArguments {
  readonly command: "calc";
  /** Where the result goes; nowhere for a report alone. */
  readonly output: string | undefined;
  readonly inPlace: boolean;
  readonly csv: boolean;
  /** The sheet for a result that is a single one. */
  readonly sheet: string | undefined;
}

export interface TableArguments extends BooksArguments {
  readonly command: "table";
  readonly formula: string;
  /** Where the result goes; standard output where nothing is said. */
  readonly output: string | undefined;
}

export interface CardsArguments extends BooksArguments {
  readonly command: "cards";
  /** The folder for the cards. */
  readonly output: string;
  /** The sheet that asks for them. */
  readonly sheet: string;
  /** The address of the hosted card page, for links and codes. */
  readonly page: string | undefined;
}

/** Reads a command line, without the program's own name. */
export function readArguments(args: readonly string[]): Arguments {
  const { values, positionals } = parse(args);
  const [command, ...rest] = positionals;
  const saying = { json: values.json === true, quiet: values.quiet === true };
  if (values.version === true) return { command: "version", ...saying };
  if (command === undefined && values.help === true)
    return { command: "help", about: undefined, ...saying };
  if (command === undefined) throw new BadUsage("no command is given");
  if (!isCommand(command)) throw new BadUsage(`"${command}" is not a command`);
  if (values.help === true) return { command: "help", about: command, ...saying };
  const misplaced = given(values).find((name) => !optionsOf(command).some(([own]) => own === name));
  if (misplaced !== undefined) throw new BadUsage(whereItGoes(misplaced, command));
  if (saying.json && saying.quiet) throw new BadUsage("give --json or --quiet, not both");
  if (values.output === "") throw new BadUsage("-o needs the name of a file or folder");
  return { ...readCommand(command, rest, values), ...saying };
}

type Values = Partial<Record<OptionName, string | boolean>>;

function readCommand(
  command: CommandName,
  words: readonly string[],
  values: Values,
): ReadCommand<Arguments> {
  const text = (name: OptionName) => values[name] as string | undefined;
  const flag = (name: OptionName) => values[name] === true;
  const timeout = readSeconds(text("timeout"));
  const output = text("output");
  const books = () => ({ inputs: readInputs(command, words), timeout, dryRun: flag("dry-run") });
  switch (command) {
    case "help":
      return { command, about: readOnly(command, words, commandNames) };
    case "completion": {
      const shell = readOnly(command, words, SHELLS);
      if (shell === undefined) throw new BadUsage(`completion needs a shell: ${SHELLS.join(", ")}`);
      return { command, shell };
    }
    case "value": {
      const [formula, ...more] = words;
      if (formula === undefined) throw new BadUsage("value needs a formula");
      if (more.length > 0) throw new BadUsage("value answers one formula; quote it as a whole");
      return { command, formula, csv: flag("csv"), timeout };
    }
    case "calc": {
      const inPlace = flag("in-place");
      if (inPlace && output !== undefined) throw new BadUsage("give -o or --in-place, not both");
      const read = { ...books(), output, inPlace, csv: flag("csv"), sheet: text("sheet") };
      if (inPlace && read.inputs.includes("-")) {
        throw new BadUsage("--in-place needs files; standard input has no place");
      }
      return { command, ...read };
    }
    case "cards": {
      const read = books();
      if (output === undefined) throw new BadUsage("cards needs -o and a folder");
      if (output === "-") throw new BadUsage("cards are several files; -o needs a folder");
      return { command, ...read, output, sheet: text("sheet") ?? "Cards", page: text("page") };
    }
    case "table": {
      const read = books();
      const formula = text("formula");
      if (formula === undefined) throw new BadUsage("table needs a --formula");
      if (read.inputs.includes("-")) throw new BadUsage("table needs files; found -");
      if (read.inputs.length > 1 && output === undefined) {
        throw new BadUsage("several tables need -o and a folder");
      }
      return { command, ...read, formula, output };
    }
    case "plain":
    case "portable": {
      const read = books();
      if (output === undefined) throw new BadUsage(`${command} needs -o and the name of the copy`);
      return { command, ...read, output };
    }
  }
}

/** The arguments of a command but for what all have. */
type ReadCommand<A> = A extends unknown ? Omit<A, keyof Saying> : never;

function readInputs(command: string, inputs: readonly string[]): readonly string[] {
  if (inputs.length === 0) throw new BadUsage(`${command} needs a workbook`);
  if (inputs.filter((input) => input === "-").length > 1) {
    throw new BadUsage("standard input can be read once; found - twice");
  }
  return inputs;
}

/** The one word that may follow a command, of those there are. */
function readOnly<W extends string>(
  command: string,
  [word, ...more]: readonly string[],
  words: readonly W[],
): W | undefined {
  if (more.length > 0) throw new BadUsage(`${command} takes one word; found "${more[0]}" too`);
  if (word === undefined) return undefined;
  const known = words.find((each) => each === word);
  if (known === undefined) {
    throw new BadUsage(`${command} knows no "${word}"; expected one of ${words.join(", ")}`);
  }
  return known;
}

function readSeconds(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const seconds = Number(text);
  if (text.trim() !== "" && Number.isFinite(seconds) && seconds > 0) return seconds;
  throw new BadUsage(`--timeout is "${text}"; expected a number of seconds above 0`);
}

const given = (values: Values) => Object.keys(values) as OptionName[];

/** Why an option is not one of a command's. */
function whereItGoes(option: OptionName, command: CommandName): string {
  const owners = commandNames.filter((name) => COMMANDS[name].options[option] !== undefined);
  return owners.length === 1
    ? `--${option} goes with ${owners[0]} alone`
    : `--${option} does not go with ${command}`;
}

function parse(args: readonly string[]): { values: Values; positionals: string[] } {
  const options = Object.fromEntries(
    Object.entries<OptionForm>(OPTIONS).map(([name, { short, value }]) => {
      const type = value === undefined ? ("boolean" as const) : ("string" as const);
      return [name, { type, ...(short !== undefined && { short }) }];
    }),
  );
  try {
    const { values, positionals } = parseArgs({ args: [...args], allowPositionals: true, options });
    return { values: values, positionals };
  } catch (error) {
    const [sentence = ""] = (error instanceof Error ? error.message : String(error)).split(". ");
    throw new BadUsage(sentence.replace(/\.$/, ""));
  }
}
