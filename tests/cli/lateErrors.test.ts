import { EventEmitter } from "node:events";
import { describe, expect, it } from "vitest";
import { endOnLateErrors } from "../../src/cli/lateErrors";

/** A process that only notes with which status it would end. */
function listening(exitCode?: number) {
  const said: string[] = [];
  const ended: number[] = [];
  const process = Object.assign(new EventEmitter(), {
    exitCode,
    exit: (status: number) => ended.push(status),
  });
  endOnLateErrors(process, (line) => said.push(line));
  return { process, said, ended };
}

describe("an exception that comes after the work is done", () => {
  it.each(["uncaughtException", "unhandledRejection"])("is one line and status 2: %s", (event) => {
    const { process, said, ended } = listening();
    process.emit(event, new Error(`the engine stumbled\n${"source ".repeat(1000)}`));
    expect([said, ended]).toEqual([
      ["spare: this could not be computed: the engine stumbled\n"],
      [2],
    ]);
  });

  it("is nothing to speak of where nobody reads the output any more", () => {
    const { process, said, ended } = listening(1);
    process.emit("uncaughtException", Object.assign(new Error("write EPIPE"), { code: "EPIPE" }));
    expect([said, ended]).toEqual([[], [1]]);
  });
});
