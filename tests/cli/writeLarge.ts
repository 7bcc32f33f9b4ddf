/** Writes so many megabytes as the command line writes a result: `npx tsx tests/cli/writeLarge.ts FILE 200`. */
import { writeOutput } from "../../src/cli/output";

const [path = "", megabytes = "1"] = process.argv.slice(2);
try {
  await writeOutput(path, new Uint8Array(Number(megabytes) << 20).fill(1));
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exit(2);
}
