/**
 * Tries hostile files, each in both hosts, and prints a line a try. A process of its own, so that what hangs can be
 * ended, and memory measured: `node --import tsx tests/hostile/child.ts SEED 0 3 17`.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { prepareNode } from "../../src/engine/node";
import { attempts, type Host } from "./attempt";
import { hostileFiles } from "./files";
import { most } from "./tryFiles";

/** What one try came to. */
export interface Tried {
  readonly index: number;
  readonly name: string;
  readonly host: Host;
  /** What is wrong with what came of it. */
  readonly fault: string | undefined;
  /** Of the processor, which other programs on the machine change little. */
  readonly seconds: number;
  /** The most that the process had in memory. */
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
let swept = 0;
for (const index of indices) {
  const file = files[index]!;
  const bytes = file.bytes();
  for (const [host, attempt] of Object.entries(attempts)) {
    if (megabytesHeld() > swept + 64) sweep();
    forgetPeak();
    say({ begins: index, host });
    const start = process.cpuUsage();
    const fault = await attempt(file, bytes, folder);
    const { user, system } = process.cpuUsage(start);
    const seconds = (user + system) / 1e6;
    let megabytes = peakMegabytes();
    if (megabytes > most.megabytes) {
      // Perhaps the tries before left some of that: once more, after a sweep.
      sweep();
      forgetPeak();
      await attempt(file, bytes, folder);
      megabytes = peakMegabytes();
    }
    say({ index, name: file.name, host, fault, seconds, megabytes });
  }
}
process.exit(0);

/** Sweeps up what the tries before have left; before each of them it would take longer than most of them do. */
function sweep(): void {
  globalThis.gc?.();
  swept = megabytesHeld();
}

function megabytesHeld(): number {
  const { heapUsed, external } = process.memoryUsage();
  return (heapUsed + external) / 2 ** 20;
}

/** Linux forgets on request the most memory that a process has had; elsewhere it is that of all tries so far. */
function forgetPeak(): void {
  if (process.platform === "linux") writeFileSync("/proc/self/clear_refs", "5");
}

function peakMegabytes(): number {
  if (process.platform !== "linux") return process.resourceUsage().maxRSS / 1024;
  return Number(/^VmHWM:\s*(\d+)/m.exec(readFileSync("/proc/self/status", "utf8"))![1]) / 1024;
}

function say(line: object): void {
  process.stdout.write(`${JSON.stringify(line)}\n`);
}
