import manifest from "../../package.json";
import { readArguments, type Arguments } from "./arguments";
import { calc } from "./calc";
import { cards } from "./cards";
import { COMMANDS, commandNames, isCommand, optionsOf } from "./commands";
import { completionFor } from "./completion";
import { copy } from "./copy";
import { lineOn, type ExitStatus } from "./eachBook";
import { BadUsage } from "./problem";
import { complain, say, type Said, type Terminal } from "./terminal";
import { overview, usageOf } from "./usage";
import { table } from "./table/table";
import { value } from "./value";

/** Runs one command line. Whatever goes wrong is one line on standard error. */
export async function run(args: readonly string[], terminal: Terminal): Promise<ExitStatus> {
  try {
    return await follow(readArguments(args), terminal);
  } catch (error) {
    const hint = error instanceof BadUsage ? ` (${helpFor(args)} shows how it is used)` : "";
    complain(lineOn(error) + hint, terminal);
    return 2;
  }
}

/** Where the help is that says how a command line of this kind is used. */
function helpFor(args: readonly string[]): string {
  const command = args.find(isCommand);
  return command === undefined ? "spare --help" : `spare help ${command}`;
}

async function follow(args: Arguments, terminal: Terminal): Promise<ExitStatus> {
  const tell = (said: Said): ExitStatus => {
    say(said, { ...args, quiet: false }, terminal);
    return 0;
  };
  switch (args.command) {
    case "help":
      return tell(helpOn(args.about));
    case "version":
      return tell({ text: manifest.version, json: () => ({ version: manifest.version }) });
    case "completion": {
      const script = completionFor(args.shell);
      return tell({ text: script, json: () => ({ shell: args.shell, script }) });
    }
    case "value":
      return value(args, terminal);
    case "calc":
      return calc(args, terminal);
    case "plain":
    case "portable":
      return copy(args, terminal);
    case "table":
      return table(args, terminal);
    case "cards":
      return cards(args, terminal);
  }
}

function helpOn(about: (typeof commandNames)[number] | undefined): Said {
  const described = (about === undefined ? commandNames : [about]).map((name) => {
    const { takes, what, examples } = COMMANDS[name];
    return { command: name, takes, what, options: Object.fromEntries(optionsOf(name)), examples };
  });
  return {
    text: about === undefined ? overview() : usageOf(about),
    json: () => ({ commands: described }),
  };
}
