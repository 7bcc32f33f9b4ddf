import { endOnLateErrors } from "./lateErrors";
import { run } from "./run";

endOnLateErrors(process, (line) => process.stderr.write(line));
const status = await run(process.argv.slice(2), { out: process.stdout, err: process.stderr });
process.exitCode = status;
