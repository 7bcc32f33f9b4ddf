/**
 * Tries hostile files, each in both hosts, and prints a line a try. A process of its own, so that what hangs can be
 * ended, and memory measured: `node --import tsx tests/hostile/child.ts SEED 0 3 17`.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { prepareNode } from "../../src/engine/node";
import { attempts, type Host } from "./attempt";
import { hostileFiles } from "./files";

/** What one try came to. */
export interface Tried {
  readonly index: number;
  readonly name: string;
  readonly host: Host;
  /** What is wrong with what came of it. */
  readonly fault: string | undefined;
  /** Of the processor, which other programs on the machine change little. */
  readonly seconds: number;
  /** The most that the process has had in memory so far. */
  readonly megabytes: number;
}

const [seed = 0, ...indices] = process.argv.slice(2).map(Number);
const files = hostileFiles(seed);
const folder = mkdtempSync(join(tmpdir(), "spare-hostile-"));
process.on("exit", () => rmSync(folder, { recursive: true, force: true }));

prepareNode();
await import("../../src/engine/engine");
say({ ready: true });
process.on("uncaughtException", (error) => {
  process.stderr.write(String(error.stack).slice(0, 2000));
  process.exit(1);
});
for (const index of indices) {
  const file = files[index]!;
  const bytes = file.bytes();
  for (const [host, attempt] of Object.entries(attempts)) {
    globalThis.gc?.();
    say({ begins: index, host });
    const start = process.cpuUsage();
    const fault = await attempt(file, bytes, folder);
    const { user, system } = process.cpuUsage(start);
    const seconds = (user + system) / 1e6;
    const megabytes = process.resourceUsage().maxRSS / 1024;
    say({ index, name: file.name, host, fault, seconds, megabytes });
  }
}
process.exit(0);

function say(line: object): void {
  process.stdout.write(`${JSON.stringify(line)}\n`);
}
