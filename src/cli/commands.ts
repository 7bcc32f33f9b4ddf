/**
 * What can be typed: the one table that reading a command line, its help and the shells' completion all go by.
 */

/** How an option is typed. */
export interface OptionForm {
  readonly short?: string;
  /** What stands for its value in the help; nothing for an option that is given or not. */
  readonly value?: string;
}

/** Every option there is, by its long name. */
export const OPTIONS = {
  output: { short: "o", value: "WHERE" },
  "in-place": {},
  "dry-run": {},
  csv: {},
  formula: { value: "FORMULA" },
  sheet: { value: "NAME" },
  page: { value: "ADDRESS" },
  timeout: { value: "SECONDS" },
  json: {},
  quiet: { short: "q" },
  help: { short: "h" },
  version: { short: "V" },
} as const satisfies Readonly<Record<string, OptionForm>>;

export type OptionName = keyof typeof OPTIONS;

/** One command. */
export interface Command {
  /** What follows its name: `book.xlsx… [-o WHERE | --in-place]`. */
  readonly takes: string;
  /** What it does, as the end of a line. */
  readonly what: string;
  /** The same at more length, in lines. */
  readonly more: readonly string[];
  /** Its own options, each with what it is for here. */
  readonly options: Readonly<Partial<Record<OptionName, string>>>;
  /** What else may follow its name, for completion; files unless said. */
  readonly words?: readonly string[];
  readonly examples: readonly string[];
}

const TIMEOUT = "give a workbook up that takes longer to compute; there is no limit unless given";
const DRY_RUN = "report alone, whatever else is said";

const CALC: Command = {
  takes: "FILE… [-o WHERE | --in-place]",
  what: "work out the formulas that use SPARE functions, and those that read from them",
  more: [
    "Says what came of the formulas and which cells change. With -o or --in-place it saves the",
    "values and leaves all else as it is. A FILE is a workbook, a .csv or .tsv file whose cells may",
    "hold formulas, or - for standard input. WHERE is a file, a folder where there are several",
    "files, or - for standard output, which sends the report to standard error.",
  ],
  options: {
    output: "where the result goes",
    "in-place": "save into the files themselves",
    "dry-run": DRY_RUN,
    csv: "the result as comma-separated values, for -o - or a folder; -o out.csv says it too",
    sheet: "the sheet that goes into a .csv file, the first unless given",
    timeout: TIMEOUT,
  },
  examples: [
    "spare calc book.xlsx -o out.xlsx",
    "spare calc squads/*.xlsx -o results/",
    "spare calc - -o - --csv < log.csv > out.csv",
  ],
};

const PLAIN: Command = {
  takes: "FILE… -o WHERE",
  what: "make a copy with values in place of those formulas, each formula in a note",
  more: ["WHERE is as for calc. For people who do not have the add-in."],
  options: { output: "where the copy goes", "dry-run": DRY_RUN, timeout: TIMEOUT },
  examples: ["spare plain book.xlsx -o copy.xlsx"],
};

const PORTABLE: Command = {
  takes: "FILE… -o WHERE",
  what: "make a copy that calculates in Excel without the add-in",
  more: [
    "WHERE is as for calc. What cannot calculate becomes a value with a note, and the report says which.",
  ],
  options: PLAIN.options,
  examples: ["spare portable book.xlsx -o copy.xlsx"],
};

const CARDS: Command = {
  takes: "FILE… -o FOLDER",
  what: 'make a card for the phone of each lifter on the sheet "Cards", and a page to print',
  more: ["Of several workbooks each has a folder of its own name in FOLDER."],
  options: {
    output: "the folder for the cards",
    sheet: 'the sheet that asks for them, "Cards" unless given',
    page: "where the card page is hosted, for links and codes",
    "dry-run": DRY_RUN,
    timeout: TIMEOUT,
  },
  examples: ["spare cards book.xlsx -o cards --page https://your.host/card/"],
};

const VALUE: Command = {
  takes: "FORMULA",
  what: "answer one formula; a result of several cells is a table",
  more: [
    "FORMULA reads no cells; quote it for the shell. An error goes to standard error with its message.",
  ],
  options: { csv: "the result as comma-separated values", timeout: "give up after that long" },
  words: [],
  examples: ['spare value "SPARE.LOADFOR(140, 5, 2, 2.5)"', 'spare value "SPARE.LOADCHART(140)"'],
};

const TABLE: Command = {
  takes: "FILE… --formula FORMULA [-o WHERE]",
  what: "answer one formula over a table that may be too large for a workbook",
  more: [
    "FILE is a .csv, .tsv or .parquet file whose first row has the columns' names; FORMULA names them in",
    "brackets. Where the function has a `by`, the rows of one key are read and answered at a time. WHERE",
    "is a .csv, .tsv or .parquet file, a folder, or standard output, unless given. Wants DuckDB:",
    "npm install @duckdb/node-api",
  ],
  options: {
    formula: 'one call, with columns as arguments: [load], [reserve]&"", HSTACK([lifter],[week])',
    output: "where the result goes",
    "dry-run": DRY_RUN,
    timeout: "give up after that long",
  },
  examples: [
    `spare table log.parquet --formula 'SPARE.LOGSUMMARY([week],[load],[reps],[reserve]&"")' -o summary.csv`,
  ],
};

const HELP: Command = {
  takes: "[COMMAND]",
  what: "show how spare, or one command of it, is used",
  more: [],
  options: {},
  examples: ["spare help calc"],
};

/** The shells that can complete what is typed. */
export const SHELLS = ["bash", "zsh", "fish"] as const;
export type Shell = (typeof SHELLS)[number];

const COMPLETION: Command = {
  takes: SHELLS.join("|"),
  what: "print what lets a shell complete commands and options",
  more: ["The printed script is sourced by the shell's own start file."],
  options: {},
  words: SHELLS,
  examples: [
    'eval "$(spare completion bash)"          # in ~/.bashrc',
    'eval "$(spare completion zsh)"           # in ~/.zshrc, after compinit',
    "spare completion fish | source           # in ~/.config/fish/config.fish",
  ],
};

export const COMMANDS = {
  calc: CALC,
  plain: PLAIN,
  portable: PORTABLE,
  cards: CARDS,
  value: VALUE,
  table: TABLE,
  help: HELP,
  completion: COMPLETION,
} as const;

export type CommandName = keyof typeof COMMANDS;
export const commandNames = Object.keys(COMMANDS) as CommandName[];

export const isCommand = (word: string): word is CommandName => Object.hasOwn(COMMANDS, word);

/** The options that go with every command. */
export const SHARED: Readonly<Partial<Record<OptionName, string>>> = {
  json: "the report for programs",
  quiet: "no report; what went wrong is said all the same",
  help: "show how the command is used",
};

/** All options of a command, its own first. */
export const optionsOf = (command: CommandName) =>
  Object.entries({ ...COMMANDS[command].options, ...SHARED }) as [OptionName, string][];

/** An option as it is typed: `-o, --output WHERE`. */
export function spelled(name: OptionName): string {
  const { short, value }: OptionForm = OPTIONS[name];
  const long = value === undefined ? `--${name}` : `--${name} ${value}`;
  return short === undefined ? `    ${long}` : `-${short}, ${long}`;
}
