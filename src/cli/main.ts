import { run } from "./run";

const status = await run(process.argv.slice(2), { out: process.stdout, err: process.stderr });
process.exitCode = status;
