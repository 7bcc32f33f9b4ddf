/** `npm start`: builds what is not built yet, serves the workbook and shows it. */
import { parseArgs } from "node:util";
import { buildIfStale } from "./dist";
import { openBrowser } from "./openBrowser";
import { DIST } from "./paths";
import { serve } from "./serve";

const usage = `npm start -- [--port N] [--no-open]

  --port N    the port to serve on (3210 unless given; the next free one where it is taken)
  --no-open   do not open a browser`;

async function main(): Promise<void> {
  const { port, open, help } = readArguments(process.argv.slice(2));
  if (help) {
    console.log(usage);
    return;
  }
  await buildIfStale(() => {
    console.log("Building the workbook, which takes about half a minute ...");
  });
  const { address } = await serve(DIST, port, (taken) => {
    console.log(`Port ${taken} is taken, trying the next one.`);
  });
  console.log(`Reps to Spare is at ${address}\nPress Ctrl+C to stop.`);
  if (open) openBrowser(address);
}

function readArguments(args: string[]): { port: number; open: boolean; help: boolean } {
  const { values } = parseArgs({
    args,
    options: {
      port: { type: "string", default: "3210" },
      "no-open": { type: "boolean", default: false },
      help: { type: "boolean", short: "h", default: false },
    },
  });
  const port = Number(values.port);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new Error(`--port is "${values.port}"; it takes a whole number from 1 to 65535`);
  }
  return { port, open: !values["no-open"], help: values.help };
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
