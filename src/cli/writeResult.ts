import { STANDARD } from "./files";
import { writeOutput } from "./output";
import type { Output } from "./terminal";

/** Writes a result to its file, or to standard output. */
export async function writeResult(
  target: string,
  bytes: Uint8Array,
  standardOutput: Output,
): Promise<void> {
  if (target === STANDARD) standardOutput.write(bytes);
  else await writeOutput(target, bytes);
}
