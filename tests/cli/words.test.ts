import { execFileSync, spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { commandNames, optionsOf, SHELLS } from "../../src/cli/commands";
import { spare } from "./support";

describe("spare value", () => {
  it("answers one formula, with all its digits", async () => {
    expect(await spare("value", "SPARE.LOADFOR(140,5,2,2.5)")).toMatchObject({
      status: 0,
      out: "112.5\n",
      err: "",
    });
    expect((await spare("value", "=ROUND(SPARE.E1RM(100,5),1)")).out).toBe("116.7\n");
    expect((await spare("value", "SPARE.E1RM(100,5)")).out).toBe("116.666666666667\n");
    expect((await spare("value", 'SPARE.PLATES(112.5)&" kg"')).out).toBe("25 + 20 + 1.25 kg\n");
  });

  it("shows a result of several cells as a table, and as values parted by commas", async () => {
    const formula = "SPARE.WARMUPSETS(100)";
    expect((await spare("value", formula)).out).toBe(
      "load  reps\n40    8\n60    5\n75    3\n90    1\n",
    );
    expect((await spare("value", formula, "--csv")).out).toBe(
      "load,reps\n40,8\n60,5\n75,3\n90,1\n",
    );
  });

  it("says an error with its message on standard error, and ends with 1", async () => {
    const { status, out, err } = await spare("value", 'SPARE.E1RM("80kg",5)');
    expect([status, out]).toEqual([1, ""]);
    expect(err).toBe('spare: #VALUE! load is text, "80kg"; expected a load above 0\n');
  });

  it("names the formula where nothing is said of the error", async () => {
    const { status, err } = await spare("value", "SPARE.NONE(140)");
    expect([status, err]).toEqual([1, "spare: #NAME? is what =SPARE.NONE(140) comes to\n"]);
  });

  it("refuses what is no formula of ours", async () => {
    for (const [formula, reason] of [
      ["1+1", "uses no SPARE function"],
      ["SPARE.E1RM([1]Plan!A1,5)", "reads another workbook"],
    ] as const) {
      const { status, err } = await spare("value", formula);
      expect([status, err]).toEqual([2, expect.stringContaining(reason)]);
    }
  });
});

describe("--json", () => {
  it("goes with every command", async () => {
    const parsed = async (...args: string[]) =>
      JSON.parse((await spare(...args, "--json")).out) as object;
    expect(await parsed("value", "SPARE.RPETORIR(8)")).toEqual({
      formula: "=SPARE.RPETORIR(8)",
      values: [[2]],
      error: null,
      message: null,
    });
    expect(await parsed("value", 'SPARE.E1RM("x9",5)')).toMatchObject({ error: "#VALUE!" });
    expect(await parsed("--version")).toEqual({ version: expect.any(String) as string });
    expect(await parsed("help")).toMatchObject({
      commands: commandNames.map((command) => ({ command })),
    });
    expect(await parsed("completion", "bash")).toMatchObject({ shell: "bash" });
  });
});

describe("help", () => {
  it("names every command, and the exit statuses", async () => {
    for (const args of [["--help"], ["-h"], ["help"]]) {
      const { status, out } = await spare(...args);
      expect(status).toBe(0);
      for (const word of [...commandNames, "Exit status"]) expect(out).toContain(word);
    }
  });

  it.each(commandNames)("tells each option of %s, its form and what it is for", async (command) => {
    const { out } = await spare("help", command);
    expect((await spare(command, "--help")).out).toBe(out);
    for (const [option, what] of optionsOf(command)) {
      expect(out).toContain(`--${option}`);
      expect(out).toContain(what);
    }
    expect(Math.max(...out.split("\n").map(({ length }) => length))).toBeLessThanOrEqual(110);
  });

  it("has the version of the package in both spellings", async () => {
    const { out } = await spare("--version");
    expect(out).toMatch(/^\d+\.\d+\.\d+\n$/);
    expect((await spare("-V")).out).toBe(out);
  });
});

/** Whether a shell is here to be asked. */
const has = (shell: string) => spawnSync(shell, ["-c", "true"]).status === 0;

describe("completion", () => {
  it.each(SHELLS)("for %s names every command and every option", async (shell) => {
    const { status, out } = await spare("completion", shell);
    expect(status).toBe(0);
    for (const command of commandNames) {
      expect(out).toContain(command);
      for (const [option] of optionsOf(command)) expect(out).toContain(option);
    }
  });

  it.each(SHELLS.filter(has))("is a script that %s takes", async (shell) => {
    const { out } = await spare("completion", shell);
    execFileSync(shell, ["-n"], { input: out });
  });

  it.runIf(has("bash"))("completes in bash", async () => {
    const { out } = await spare("completion", "bash");
    const complete = (...words: string[]) => {
      const script = `${out}
        COMP_WORDS=(${words.map((word) => `'${word}'`).join(" ")}) COMP_CWORD=${words.length - 1}
        _spare; printf '%s\\n' "\${COMPREPLY[@]}"`;
      const said = execFileSync("bash", ["--norc", "-c", script], { encoding: "utf8" });
      return said.trim().split("\n").sort();
    };
    expect(complete("spare", "p")).toEqual(["plain", "portable"]);
    expect(complete("spare", "calc", "--d")).toEqual(["--dry-run"]);
    expect(complete("spare", "completion", "z")).toEqual(["zsh"]);
    expect(complete("spare", "calc", "-o", "package.j")).toEqual(["package.json"]);
    expect(complete("spare", "calc", "package-l")).toEqual(["package-lock.json"]);
    expect(complete("spare", "calc", "--sheet", "p")).toEqual([""]);
  });
});
