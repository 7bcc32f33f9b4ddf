import { parseArgs } from "node:util";

/** What is typed on the command line, taken apart. */
export type Arguments =
  { readonly command: "help" | "version" } | CalcArguments | CardsArguments | CopyArguments;

/** What all commands that take a workbook have. */
export interface WorkbookArguments {
  readonly input: string;
  /** How many seconds the workbook may take to compute; as long as it takes where nothing is said. */
  readonly timeout: number | undefined;
}

export interface CopyArguments extends WorkbookArguments {
  readonly command: "plain" | "portable";
  readonly output: string;
  readonly json: boolean;
}

export interface CalcArguments extends WorkbookArguments {
  readonly command: "calc";
  /** Where the result goes; nowhere for a report alone. */
  readonly output: string | undefined;
  readonly inPlace: boolean;
  readonly json: boolean;
  /** Whether to write nothing, wherever the result would go. */
  readonly dryRun: boolean;
}

export interface CardsArguments extends WorkbookArguments {
  readonly command: "cards";
  /** The folder for the cards. */
  readonly output: string;
  /** The sheet that asks for them. */
  readonly sheet: string;
  /** The address of the hosted card page, for links and codes. */
  readonly page: string | undefined;
}

/** A command line that cannot be followed; the message says why in one line. */
export class BadUsage extends Error {
  override name = "BadUsage";
}

export const USAGE = `Usage: spare calc book.xlsx [-o out.xlsx | --in-place] [--json] [--dry-run]
       spare plain book.xlsx -o copy.xlsx [--json]
       spare portable book.xlsx -o copy.xlsx [--json]
       spare cards book.xlsx -o folder [--sheet NAME] [--page ADDRESS]

calc       works out the formulas that use SPARE functions, and those that read from them,
           and says what came of it and which cells change; with -o or --in-place it
           saves the values and leaves all else as it is
plain      makes a copy with values in place of those formulas, each formula in a note
portable   makes a copy that calculates in Excel without the add-in; what cannot
           becomes a value with a note, and the report says which
cards      makes a card for the phone of each lifter on the sheet "Cards", and a page to print

  -o, --output FILE   where the result goes
      --in-place      calc: save into the workbook itself
      --json          report as JSON: every changed cell old and new, and of a copy
                      cell by cell what stays live and what is a value
      --dry-run       calc: report alone, whatever -o or --in-place say
      --sheet NAME    cards: the sheet that asks for them, "Cards" unless given
      --page ADDRESS  cards: where the card page is hosted, for links and codes
      --timeout SECONDS  give up where computing takes longer; there is no limit unless given
  -h, --help          show this
      --version       show the version

Exit status: 0, 1 if some cells failed or had to keep an old value, 2 for bad usage or a
file that cannot be read.`;

/** Reads a command line, without the program's own name. */
export function readArguments(args: readonly string[]): Arguments {
  const { values, positionals } = parse(args);
  if (values.help) return { command: "help" };
  if (values.version) return { command: "version" };
  const [command, input, ...more] = positionals;
  const output = values.output;
  if (command === undefined) throw new BadUsage("no command is given");
  if (!isCommand(command)) {
    throw new BadUsage(`"${command}" is not a command`);
  }
  if (input === undefined) throw new BadUsage(`${command} needs a workbook`);
  if (more.length > 0) throw new BadUsage(`${command} takes one workbook; found "${more[0]}" too`);
  if (output === "") throw new BadUsage("-o needs the name of a file");
  if (command !== "cards" && (values.sheet ?? values.page) !== undefined) {
    throw new BadUsage(`--${values.sheet === undefined ? "page" : "sheet"} goes with cards alone`);
  }
  const timeout = readSeconds(values.timeout);
  if (command === "calc") {
    const { "in-place": inPlace, json, "dry-run": dryRun } = values;
    if (inPlace && output !== undefined) throw new BadUsage("give -o or --in-place, not both");
    return { command, input, output, inPlace, json, dryRun, timeout };
  }
  const misplaced = (["in-place", "dry-run"] as const).find((option) => values[option]);
  if (misplaced !== undefined) throw new BadUsage(`--${misplaced} goes with calc alone`);
  if (command === "cards") {
    if (values.json) throw new BadUsage("--json does not go with cards");
    if (output === undefined) throw new BadUsage("cards needs -o and a folder");
    return { command, input, output, sheet: values.sheet ?? "Cards", page: values.page, timeout };
  }
  if (output === undefined) throw new BadUsage(`${command} needs -o and the name of the copy`);
  return { command, input, output, json: values.json, timeout };
}

function readSeconds(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const seconds = Number(text);
  if (text.trim() !== "" && Number.isFinite(seconds) && seconds > 0) return seconds;
  throw new BadUsage(`--timeout is "${text}"; expected a number of seconds above 0`);
}

const COMMANDS = ["calc", "plain", "portable", "cards"] as const;

const isCommand = (word: string): word is (typeof COMMANDS)[number] =>
  COMMANDS.some((command) => command === word);

function parse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        output: { type: "string", short: "o" },
        "in-place": { type: "boolean", default: false },
        json: { type: "boolean", default: false },
        "dry-run": { type: "boolean", default: false },
        timeout: { type: "string" },
        sheet: { type: "string" },
        page: { type: "string" },
        help: { type: "boolean", short: "h", default: false },
        version: { type: "boolean", default: false },
      },
    });
  } catch (error) {
    const [sentence = ""] = (error instanceof Error ? error.message : String(error)).split(". ");
    throw new BadUsage(sentence.replace(/\.$/, ""));
  }
}
