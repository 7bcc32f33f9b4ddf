import { columns } from "./columns";
import { COMMANDS, commandNames, optionsOf, spelled, type CommandName } from "./commands";

/** What the exit status of every command says. */
export const STATUSES = [
  "Exit status: 0, 1 if some cells failed or had to keep an old value, 2 for bad usage or",
  "what cannot be read or written; of several files the highest. 129, 130 and 143 are ends",
  "by a signal.",
];

/** How spare is used. */
export function overview(): string {
  return [
    "Usage: spare COMMAND …",
    "",
    ...columns(commandNames.map((name) => [name, COMMANDS[name].what])),
    "",
    "Every command knows --json, the report for programs, and -q, --quiet, no report.",
    "spare help COMMAND shows the options of one; -V, --version shows the version.",
    "",
    ...STATUSES,
  ].join("\n");
}

/** How one command is used. */
export function usageOf(name: CommandName): string {
  const { takes, what, more, examples } = COMMANDS[name];
  return [
    `Usage: spare ${name} ${takes}`,
    "",
    `${what.charAt(0).toUpperCase()}${what.slice(1)}.`,
    ...more,
    "",
    ...columns(optionsOf(name).map(([option, what]) => [`  ${spelled(option)}`, what])),
    "",
    ...examples.map((example) => `  ${example}`),
    "",
    ...STATUSES,
  ].join("\n");
}
