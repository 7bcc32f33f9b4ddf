import { parseArgs } from "node:util";

export interface StartArguments {
  readonly port: number;
  readonly open: boolean;
  readonly help: boolean;
}

/**
 * Reads what `npm start` was told. npm passes on only what stands after `--`; of a forgotten `--`
 * it keeps `--port=N` in the environment, and of `--port N` a "true" there and the bare number.
 */
export function readStartArguments(
  args: string[],
  environment: Readonly<Record<string, string | undefined>>,
): StartArguments {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      port: { type: "string" },
      "no-open": { type: "boolean", default: false },
      help: { type: "boolean", short: "h", default: false },
    },
  });
  const keptByNpm = environment.npm_config_port;
  const bare = keptByNpm === "true" ? positionals.shift() : keptByNpm;
  if (positionals.length > 0) throw new Error(`"${positionals[0]}" is not understood; try --help`);
  return {
    port: readPort(values.port ?? bare ?? "3210"),
    open: !values["no-open"],
    help: values.help,
  };
}

function readPort(text: string): number {
  const port = Number(text);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new Error(`--port is "${text}"; it takes a whole number from 1 to 65535`);
  }
  return port;
}
