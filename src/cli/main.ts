import { setFlagsFromString } from "node:v8";
import { endOnLateErrors } from "./lateErrors";
import { run } from "./run";

// By itself the heap grows to several times what is in use before anything is cleared away.
setFlagsFromString("--heap-growing-percent=50");
endOnLateErrors(process, (line) => process.stderr.write(line));
const status = await run(process.argv.slice(2), {
  // Asked for only where it is read: whoever does not send anything is not waited for.
  in: { [Symbol.asyncIterator]: () => process.stdin[Symbol.asyncIterator]() },
  out: process.stdout,
  err: process.stderr,
});
// Work that was given up would go on; what was printed is to reach a pipe first.
process.stdout.write("", () => process.stderr.write("", () => process.exit(status)));
