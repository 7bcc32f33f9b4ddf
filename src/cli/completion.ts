import {
  COMMANDS,
  commandNames,
  OPTIONS,
  optionsOf,
  type Command,
  type CommandName,
  type OptionForm,
  type OptionName,
  type Shell,
} from "./commands";

/** A script for a shell that completes commands, their options, and the names of files. */
export function completionFor(shell: Shell): string {
  switch (shell) {
    case "bash":
      return bash();
    case "zsh":
      return zsh();
    case "fish":
      return fish();
  }
}

/** What may follow a command's name: words that it knows, or nothing for the names of files. */
function wordsOf(name: CommandName): readonly string[] | undefined {
  const { words }: Command = COMMANDS[name];
  return name === "help" ? commandNames : words;
}

const takesValue = (name: OptionName) => (OPTIONS[name] as OptionForm).value !== undefined;
const shortOf = (name: OptionName) => (OPTIONS[name] as OptionForm).short;

/** The options of a command as they are typed, long and short. */
const typedOptions = (name: CommandName) =>
  optionsOf(name).flatMap(([option]) => {
    const short = shortOf(option);
    return short === undefined ? [`--${option}`] : [`--${option}`, `-${short}`];
  });

function bash(): string {
  const cases = commandNames.map((name) => {
    const words = wordsOf(name);
    const files = words === undefined ? " files=1" : "";
    return `    ${name}) words="${[...typedOptions(name), ...(words ?? [])].join(" ")}"${files} ;;`;
  });
  return `_spare() {
  local current="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}" words="" files=""
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "${[...commandNames, "--help", "--version"].join(" ")}" -- "$current"))
    return
  fi
  case "\${COMP_WORDS[1]}" in
${cases.join("\n")}
  esac
  case "$before" in
    -o|--output) words="" files=1 ;;
    ${valuesWithoutFiles().join("|")}) return ;;
  esac
  if [ -n "$words" ]; then COMPREPLY=($(compgen -W "$words" -- "$current")); fi
  if [ -n "$files" ] && [ "\${current#-}" = "$current" ]; then
    while IFS= read -r name; do COMPREPLY+=("$name"); done < <(compgen -f -- "$current")
    compopt -o filenames 2>/dev/null
  fi
}
complete -F _spare spare`;
}

/** Options whose value is no file, as they are typed. */
const valuesWithoutFiles = () =>
  (Object.keys(OPTIONS) as OptionName[])
    .filter((name) => takesValue(name) && name !== "output")
    .map((name) => `--${name}`);

function zsh(): string {
  const commands = commandNames.map((name) => `    ${quoted(`${name}:${COMMANDS[name].what}`)}`);
  const cases = commandNames.map((name) => {
    const options = optionsOf(name).map(([option, what]) => zshOption(option, what));
    const words = wordsOf(name);
    const rest = words === undefined ? "'*:file:_files'" : `'*:word:(${words.join(" ")})'`;
    return `    ${name}) _arguments ${[...options, rest].join(" ")} ;;`;
  });
  return `#compdef spare
_spare() {
  local -a commands=(
${commands.join("\n")}
  )
  if (( CURRENT == 2 )); then
    _describe command commands
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
${cases.join("\n")}
  esac
}
if [ "$funcstack[1]" = _spare ]; then _spare; else compdef _spare spare; fi`;
}

function zshOption(option: OptionName, what: string): string {
  const about = `[${what.replace(/[[\]:]/g, "\\$&")}]`;
  const { value }: OptionForm = OPTIONS[option];
  const action = option === "output" ? "_files" : " ";
  const takes = value === undefined ? "" : `:${value}:${action}`;
  const short = shortOf(option);
  const long = quoted(`--${option}${about}${takes}`);
  return short === undefined ? long : `${long} ${quoted(`-${short}${about}${takes}`)}`;
}

function fish(): string {
  const none = "__fish_use_subcommand";
  const lines = commandNames.flatMap((name) => {
    const after = `__fish_seen_subcommand_from ${name}`;
    const words = wordsOf(name);
    return [
      `complete -c spare -n ${none} -f -a ${name} -d ${quoted(COMMANDS[name].what)}`,
      ...(words === undefined
        ? []
        : [`complete -c spare -n ${quoted(after)} -f -a ${quoted(words.join(" "))}`]),
      ...optionsOf(name).map(([option, what]) => {
        const short = shortOf(option);
        const files = takesValue(option) ? (option === "output" ? " -r -F" : " -x") : "";
        const spelled = `-l ${option}${short === undefined ? "" : ` -s ${short}`}`;
        return `complete -c spare -n ${quoted(after)} ${spelled}${files} -d ${quoted(what)}`;
      }),
    ];
  });
  return [`complete -c spare -n ${none} -s V -l version -d 'show the version'`, ...lines].join(
    "\n",
  );
}

/** A text as every shell takes it whole. */
const quoted = (text: string) => `'${text.replaceAll("'", `'\\''`)}'`;
