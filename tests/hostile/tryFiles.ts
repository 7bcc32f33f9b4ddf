import { spawn } from "node:child_process";
import { join } from "node:path";
import { createInterface } from "node:readline";
import type { Tried } from "./child";
import { hostileFiles } from "./files";

/** What every try is held to: seconds of the processor, and megabytes of the whole process. */
export const most = { seconds: 5, megabytes: 500 };

/** So many milliseconds without a word, and a try is given up: the machine may have other work to do. */
const patience = 60_000;
/** Files that share a process, which takes a second to start. */
const batch = 100;

/** Tries hostile files in processes of their own, each file in both hosts. */
export async function tryFiles(seed: number, indices: readonly number[]): Promise<Tried[]> {
  const tried: Tried[] = [];
  let waiting = [...indices];
  while (waiting.length > 0) {
    const { results, hung } = await runChild(seed, waiting.slice(0, batch));
    tried.push(...results);
    const last = hung ?? results.at(-1);
    if (hung) tried.push(hung);
    if (!last) throw new Error("no hostile file was tried");
    waiting = waiting.slice(waiting.indexOf(last.index) + 1);
  }
  return tried;
}

/** What is wrong with a try, or nothing. */
export function faultOf({ name, host, fault, seconds, megabytes }: Tried): string | undefined {
  const what = `${name} (${host})`;
  if (fault !== undefined) return `${what} ${fault}`;
  if (seconds > most.seconds) return `${what} took ${seconds.toFixed(1)} s`;
  return megabytes > most.megabytes ? `${what} took ${Math.round(megabytes)} MB` : undefined;
}

interface Ready {
  readonly ready: true;
}

interface Begun {
  readonly begins: number;
  readonly host: Tried["host"];
}

async function runChild(
  seed: number,
  indices: readonly number[],
): Promise<{ results: Tried[]; hung: Tried | undefined }> {
  const program = join(import.meta.dirname, "child.ts");
  const args = ["--expose-gc", "--import", "tsx", program, String(seed), ...indices.map(String)];
  const child = spawn(process.execPath, args, { stdio: ["ignore", "pipe", "pipe"] });
  const results: Tried[] = [];
  let complaint = "";
  let current: Begun | undefined;
  let timer = setTimeout(giveUp, patience);
  child.stderr.on("data", (data: Buffer) => (complaint += data.toString()));
  const lines = createInterface({ input: child.stdout });
  lines.on("line", (line) => {
    clearTimeout(timer);
    timer = setTimeout(giveUp, patience);
    const said = JSON.parse(line) as Ready | Begun | Tried;
    if ("ready" in said) return;
    if ("begins" in said) current = said;
    else {
      current = undefined;
      results.push(said);
    }
  });
  await new Promise((resolve) => child.on("close", resolve));
  clearTimeout(timer);
  if (!current) {
    if (complaint !== "" || results.length === 0) throw new Error(complaint);
    return { results, hung: undefined };
  }
  const { begins: index, host } = current;
  const name = hostileFiles(seed)[index]!.name;
  const fault = `did not end well: ${complaint.slice(0, 500) || "it was given up"}`;
  return { results, hung: { index, name, host, fault, seconds: 0, megabytes: 0 } };

  function giveUp(): void {
    child.kill("SIGKILL");
  }
}
