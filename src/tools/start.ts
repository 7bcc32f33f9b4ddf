/** `npm start`: builds what is not built yet, serves the workbook and shows it. */
import { buildIfStale } from "./dist";
import { openBrowser } from "./openBrowser";
import { DIST } from "./paths";
import { serve } from "./serve";
import { readStartArguments } from "./startArguments";

const USAGE = `npm start -- [--port N] [--no-open]

  --port N    the port to serve on (3210 unless given; the next free one where it is taken)
  --no-open   do not open a browser`;

async function main(): Promise<void> {
  const { port, open, help } = readStartArguments(process.argv.slice(2), process.env);
  if (help) {
    console.log(USAGE);
    return;
  }
  await buildIfStale(["workbook", "pane", "excel"], () => {
    console.log("Building the workbook, which takes about a minute the first time …");
  });
  const { address, compressAhead } = await serve(DIST, port, (taken) => {
    console.log(`Port ${taken} is taken, trying the next one.`);
  });
  await compressAhead(["workbook.js"]);
  console.log(`Reps to Spare is at ${address}\nPress Ctrl+C to stop.`);
  if (open) openBrowser(address);
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
