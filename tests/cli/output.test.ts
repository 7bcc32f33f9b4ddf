import { execFileSync, spawn, spawnSync } from "node:child_process";
import { chmodSync, lstatSync, mkdirSync, readFileSync, symlinkSync, watch } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { randomStream } from "../random";
import { buildBook, lookAt, spare, workFolder } from "./support";

let folder: ReturnType<typeof workFolder>;
let book: string;
beforeEach(() => {
  folder = workFolder();
  const call = `<row r="1"><c r="A1"><f>SPARE.E1RM(100,5)</f></c></row>`;
  book = folder.put("book.xlsx", buildBook({ sheets: { Log: call } }));
});
afterEach(() => folder.remove());

const refusal = (output: string) => spare("calc", book, "-o", output);

describe("where a result goes", () => {
  it("is a file: a device, a pipe and a folder are refused before anything is computed", async () => {
    const pipe = folder.path("pipe");
    execFileSync("mkfifo", [pipe]);
    for (const output of ["/dev/null", pipe]) {
      const { status, err } = await refusal(output);
      expect([status, err]).toEqual([2, expect.stringContaining("it is not a file")]);
    }
    expect(lstatSync(pipe).isFIFO()).toBe(true);
    expect(lstatSync("/dev/null").isCharacterDevice()).toBe(true);
    expect((await refusal(folder.path("."))).err).toContain("is the workbook itself");
    mkdirSync(folder.path("taken/book.xlsx"), { recursive: true });
    expect((await refusal(folder.path("taken"))).err).toContain("it is a folder");
  });

  it("is not a link that leads nowhere, nor a file that can only be read", async () => {
    const link = folder.path("link.xlsx");
    symlinkSync(folder.path("gone.xlsx"), link);
    expect((await refusal(link)).err).toContain("a link that leads nowhere");
    const kept = folder.put("kept.xlsx", "kept");
    chmodSync(kept, 0o444);
    expect((await refusal(kept)).err).toContain("can only be read");
    expect(readFileSync(kept, "utf8")).toBe("kept");
    expect(folder.names()).toEqual(["book.xlsx", "kept.xlsx", "link.xlsx"]);
  });

  it("has a name that the system takes, and may have the longest of those", async () => {
    const { status, err } = await refusal(folder.path(`${"x".repeat(300)}.xlsx`));
    expect(status).toBe(2);
    expect(err).toMatch(/^[^\n]*the name is too long[^\n]*\n$/);
    const longest = `${"x".repeat(250)}.xlsx`;
    expect((await refusal(folder.path(longest))).status).toBe(0);
    expect(folder.names()).toContain(longest);
  });
});

describe("a part of the file that is called as objects' own are", () => {
  it("is in the result as it was", async () => {
    const parts = { ["__proto__"]: ["kept", "text/plain"] as const };
    const input = folder.put("parts.xlsx", buildBook({ sheets: { Log: "" }, parts }));
    expect((await spare("calc", input, "-o", folder.path("out.xlsx"))).status).toBe(0);
    expect(lookAt(folder.bytes("out.xlsx")).text("__proto__")).toBe("kept");
  });
});

describe("what is read", () => {
  it("is a file: a device and a pipe without an end are refused at once", async () => {
    const pipe = folder.path("pipe");
    execFileSync("mkfifo", [pipe]);
    for (const input of ["/dev/zero", "/dev/random", pipe]) {
      const { status, err } = await spare("calc", input);
      expect([status, err]).toEqual([2, `spare: ${input}: it is not a file\n`]);
    }
  });
});

describe("a message", () => {
  it("shows what would drive a terminal, whether a file, a sheet or a cell is called so", async () => {
    const hostile = "\u001b[2J\u0007\u009b1m\u202e";
    const shown = "\\u001b[2J\\u0007\\u009b1m\\u202e";
    const name = folder.put(`${hostile}.xlsx`, "no workbook");
    expect((await spare("calc", name)).err).toContain(shown);
    expect((await spare("calc", book, "-o", folder.path(`none/${hostile}`))).err).toContain(shown);
    expect((await spare(hostile)).err).toContain(shown);

    // Only the second kind of control character can stand in XML as it is.
    const sheet = "a\u009b1m\u202e";
    const text = `<c r="A1" t="str"><v>1_x001B_[2J\u009b1m</v></c>`;
    const call = `<c r="B1"><f>SPARE.E1RM(A1,5)</f></c><c r="C1"><f>SPARE.PERCENT1RM(5)&amp;A1</f></c>`;
    const data = `<row r="1">${text}${call}</row>`;
    const input = folder.put("hostile.xlsx", buildBook({ sheets: { [sheet]: data } }));
    for (const args of [[], ["--json"]]) {
      const { out, err } = await spare("calc", input, ...args);
      expect(out + err).not.toMatch(/[^\P{Cc}\n]|[\u202a-\u202e]/u);
      expect(out).toContain("a\\u009b1m\\u202e");
    }
  });
});

describe("a copy's report", () => {
  it("shows it as well, in sheets, cells, names, formulas and files", async () => {
    const hostile = "a\u009b1m\u202e";
    const data =
      `<row r="1"><c r="A1" t="str"><v>1_x001B_[2J\u009b1m</v></c><c r="B1"><f>SPARE.E1RM(A1,5)</f></c>` +
      `<c r="C1"><f>SPARE.PLATES(100)&amp;"\u009b1m\u202e"</f></c><c r="D1"><f>SPARE.E1RM(${hostile},5)</f></c></row>`;
    const names =
      `<definedNames><definedName name="${hostile}">SPARE.E1RM(100,5)</definedName>` +
      `<definedName name="b\u009b">SPARE.PLATES(100)</definedName></definedNames>`;
    const input = folder.put(
      `${hostile}.xlsx`,
      buildBook({ sheets: { [hostile]: data }, workbook: names }),
    );
    for (const command of ["plain", "portable"]) {
      for (const flags of [[], ["--json"]]) {
        const target = folder.path(`${hostile}-${command}.xlsx`);
        const { out, err } = await spare(command, input, "-o", target, ...flags);
        expect(out + err).not.toMatch(/[^\P{Cc}\n]|[\u202a-\u202e]/u);
        expect(out).toContain("a\\u009b1m\\u202e");
      }
    }
  });
});

/** The program as one file, which Node starts a dozen times without compiling it each time. */
const compiled = workFolder();
const program = compiled.path("writeLarge.mjs");
const args = [program];
beforeAll(async () => {
  const entry = join(import.meta.dirname, "writeLarge.ts");
  const how = { bundle: true, platform: "node", format: "esm", logLevel: "silent" } as const;
  await build({ entryPoints: [entry], outfile: program, ...how });
});
afterAll(() => compiled.remove());

describe("a write that does not come to its end", () => {
  it.each([
    ["SIGINT", 130],
    ["SIGTERM", 143],
    ["SIGHUP", 129],
  ] as const)("leaves the file as it was and nothing beside it: %s", async (signal, status) => {
    const kept = folder.put("kept.xlsx", "kept");
    const child = spawn(process.execPath, [...args, kept, "400"], { stdio: "ignore" });
    const watching = watch(join(kept, ".."), (_, name) => {
      if (name?.endsWith(".tmp")) child.kill(signal);
    });
    const ended = await new Promise((resolve) => child.on("close", resolve));
    watching.close();
    expect(ended).toBe(status);
    expect(readFileSync(kept, "utf8")).toBe("kept");
    expect(folder.names()).toEqual(["book.xlsx", "kept.xlsx"]);
  });

  it("leaves the file as it was or whole, wherever it is killed", async () => {
    const kept = folder.put("kept.xlsx", "kept");
    const random = randomStream();
    for (let time = 0; time < 8; time++) {
      const child = spawn(process.execPath, [...args, kept, "20"], { stdio: "ignore" });
      const watching = watch(join(kept, ".."), (_, name) => {
        if (name?.endsWith(".tmp")) setTimeout(() => child.kill("SIGKILL"), random() * 30);
      });
      await new Promise((resolve) => child.on("close", resolve));
      watching.close();
      const { size } = lstatSync(kept);
      expect([4, 20 << 20]).toContain(size);
    }
  });

  it("says so in one line where a file may not be so large, with nothing left", () => {
    const kept = folder.put("kept.xlsx", "kept");
    const limited = [
      "-c",
      `ulimit -f 100; exec "$@"`,
      "bash",
      process.execPath,
      ...args,
      kept,
      "1",
    ];
    const { status, stderr } = spawnSync("bash", limited, { encoding: "utf8" });
    expect([status, stderr]).toEqual([
      2,
      `${kept} cannot be written: the file is larger than allowed\n`,
    ]);
    expect(folder.names()).toEqual(["book.xlsx", "kept.xlsx"]);
    expect(readFileSync(kept, "utf8")).toBe("kept");
  });

  const disk = () => {
    const path = folder.path("disk");
    mkdirSync(path);
    const { status } = spawnSync("mount", ["-t", "tmpfs", "-o", "size=256k", "tmpfs", path]);
    return { path, mounted: status === 0 };
  };

  it("says so in one line where the disk is full, with nothing left", ({ skip }) => {
    const { path, mounted } = disk();
    if (!mounted) skip("only the system's owner may mount a small disk");
    try {
      const output = join(path, "out.xlsx");
      const { status, stderr } = spawnSync(process.execPath, [...args, output, "1"], {
        encoding: "utf8",
      });
      expect([status, stderr]).toEqual([2, `${output} cannot be written: the disk is full\n`]);
      expect(execFileSync("ls", ["-A", path], { encoding: "utf8" })).toBe("");
    } finally {
      spawnSync("umount", [path]);
    }
  });
});
