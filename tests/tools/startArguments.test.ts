import { describe, expect, it } from "vitest";
import { readStartArguments } from "../../src/tools/startArguments";

describe("what npm start is told", () => {
  it("is a port, and whether to open a browser", () => {
    expect(readStartArguments([], {})).toEqual({ port: 3210, open: true, help: false });
    expect(readStartArguments(["--port", "4000", "--no-open"], {})).toEqual({
      port: 4000,
      open: false,
      help: false,
    });
  });

  it("is understood without npm's own double dash, too", () => {
    // What npm makes of `npm start --port=4000` and of `npm start --port 4000`.
    expect(readStartArguments([], { npm_config_port: "4000" }).port).toBe(4000);
    expect(readStartArguments(["4000"], { npm_config_port: "true" }).port).toBe(4000);
  });

  it.each(["0", "65536", "-1", "80.5", "http"])("is not a port when it is %s", (port) => {
    expect(() => readStartArguments([`--port=${port}`], {})).toThrow(/from 1 to 65535/);
  });

  it("is not guessed at", () => {
    expect(() => readStartArguments(["4000"], {})).toThrow(/"4000" is not understood/);
    expect(() => readStartArguments(["--prot", "4000"], {})).toThrow(/--prot/);
  });
});
