import { visible } from "../cells/visible";

/** As much of a process as ending it takes. */
interface Ending {
  on(
    event: "uncaughtException" | "unhandledRejection",
    listener: (error: unknown) => void,
  ): unknown;
  exit(status: number): unknown;
  readonly exitCode?: number | string | null;
}

/**
 * What the spreadsheet's engine throws when nobody waits for it any more ends in one line and status 2, and not in
 * pages of the engine's source. Who reads our output may stop reading it; that is no error.
 */
export function endOnLateErrors(process: Ending, say: (line: string) => void): void {
  const end = (error: unknown) => {
    if (isClosedPipe(error)) return process.exit(Number(process.exitCode ?? 0));
    const reason = error instanceof Error ? error.message : String(error);
    const [line = ""] = reason.split("\n");
    say(`spare: this could not be computed: ${visible(line.slice(0, 300))}\n`);
    return process.exit(2);
  };
  process.on("uncaughtException", end);
  process.on("unhandledRejection", end);
}

const isClosedPipe = (error: unknown) =>
  error instanceof Error && "code" in error && error.code === "EPIPE";
