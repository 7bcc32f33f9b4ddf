import { readdirSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ROOT } from "../../src/tools/paths";
import "../built";
import { buildBook } from "../cli/support";
import { installPackage, type Installed } from "./installed";

let installed: Installed;
beforeAll(() => (installed = installPackage()), 120_000);
afterAll(() => installed.remove());

/** What a module says that runs where the package is installed. */
const sayings = (code: string) =>
  JSON.parse(installed.run(process.execPath, "--input-type=module", "-e", code)) as unknown;

const total = (isIn: (path: string) => boolean) =>
  installed.files.filter(({ path }) => isIn(path)).reduce((sum, { size }) => sum + size, 0);

describe("what is packed", () => {
  it("is the library, the command line and the licences: no tests, no sources, nothing of the page", () => {
    const paths = installed.files.map(({ path }) => path);
    expect(
      paths.filter(
        (path) =>
          !/^(LICENSE|README\.md|package\.json|dist\/(library|licences|card)\/.*|dist\/cli\.js)$/.test(
            path,
          ),
      ),
    ).toEqual([]);
    expect(
      paths.filter((path) => /test|\.xlsx$|\.map$/i.test(path.replace("/testing/", "/"))),
    ).toEqual(
      paths.filter((path) =>
        /\/(testTable|testTrend|estimateTest|meanTest)\.(js|d\.ts)$/.test(path),
      ),
    );
    for (const path of ["dist/cli.js", "dist/card/index.html", "dist/licences/library.txt"]) {
      expect(paths).toContain(path);
    }
  });

  it("has less than 3 MB of library", () => {
    const library = total((path) => !/^dist\/(cli\.js|card\/|licences\/cli)/.test(path));
    expect(library).toBeLessThan(3_000_000);
  });

  it("installs with nothing beside it", () => {
    expect(
      readdirSync(join(installed.folder, "node_modules")).filter((name) => !name.startsWith(".")),
    ).toEqual(["reps-to-spare"]);
  });
});

describe("in Node", () => {
  it("gives the core", () => {
    expect(
      sayings(`import { e1rm, equations, strengthTrend, BadInput } from "reps-to-spare";
        const sets = [0, 3, 7, 10].map((date) => ({ date: 46000 + date, load: 100 + date, reps: 5, reserve: 2 }));
        let refused;
        try { e1rm(100, 40, equations.epley) } catch (error) { refused = error instanceof BadInput }
        console.log(JSON.stringify([e1rm(100, 7, equations.epley), refused, typeof strengthTrend]))`),
    ).toEqual([expect.closeTo(100 * (1 + 7 / 30), 9), true, "function"]);
  });

  it("gives the cell functions on grids, with the catalogue", () => {
    const [load, chart, error, count, first] = sayings(`
      import { call, catalogue, CellError } from "reps-to-spare/functions";
      const [[error]] = call("E1RM", ["80kg", 5]);
      for (const { id } of catalogue.functions) call(id, []);
      console.log(JSON.stringify([call("LOADFOR", [140, 5, 2, 2.5]), call("spare.warmupsets", [[[100]]]),
        [error instanceof CellError, error.code, error.message],
        catalogue.functions.length, catalogue.functions[0]]))`) as unknown[];
    expect(load).toEqual([[112.5]]);
    expect(chart).toEqual([
      ["load", "reps"],
      [40, 8],
      [60, 5],
      [75, 3],
      [90, 1],
    ]);
    expect(error).toEqual([true, "#VALUE!", 'load is text, "80kg"; expected a load above 0']);
    expect(count).toBeGreaterThan(50);
    expect(first).toMatchObject({
      id: "E1RM",
      family: "strength",
      source: expect.any(String) as string,
    });
  });

  it("says that there is no such function", () => {
    expect(
      sayings(`import { call } from "reps-to-spare/functions";
        try { call("toString", []) } catch ({ message }) { console.log(JSON.stringify(message)) }`),
    ).toBe('there is no function "toString"');
  });

  it("keeps its insides to itself", () => {
    expect(() => sayings(`import "reps-to-spare/dist/library/core/zip.js"`)).toThrow(
      /ERR_PACKAGE_PATH_NOT_EXPORTED/,
    );
  });
});

describe("the command line", () => {
  it("runs by npx under the package's name, and by its own", () => {
    const sheets = { Log: `<row r="1"><c r="A1"><f>SPARE.E1RM(100,5)</f></c></row>` };
    installed.put("book.xlsx", buildBook({ sheets }));
    const out = installed.run("npx", "--offline", "reps-to-spare", "calc", "book.xlsx", "--json");
    expect(JSON.parse(out)).toMatchObject({ calculated: [{ cell: "A1" }] });
    expect(installed.run("npx", "--offline", "spare", "value", "SPARE.LOADFOR(140,5,2,2.5)")).toBe(
      "112.5\n",
    );
  });
});

describe("a table without DuckDB", () => {
  it("is refused in one line that says what to install", () => {
    installed.put("log.csv", "load,reps\n100,5\n");
    const args = ["spare", "table", "log.csv", "--formula", "SPARE.E1RM([load],[reps])"];
    expect(() => installed.run("npx", "--offline", ...args)).toThrow(
      /ended with 2:\nspare: large tables are read by DuckDB, which is not installed: npm install @duckdb\/node-api\n$/,
    );
  });
});

describe("a bundler", () => {
  const bundled = async (code: string) => {
    const { outputFiles, warnings } = await build({
      stdin: { contents: code, resolveDir: installed.folder },
      ...{
        bundle: true,
        minify: true,
        format: "esm",
        platform: "browser",
        write: false,
        logLevel: "silent",
      },
    });
    expect(warnings).toEqual([]);
    return outputFiles[0]!.text;
  };

  it("keeps of the core what is asked for: e1rm alone is a few kB", async () => {
    const code = await bundled(
      `import { e1rm, equations } from "reps-to-spare"; console.log(e1rm(100, 7, equations.epley));`,
    );
    expect(code.length).toBeLessThan(4_000);
    expect(code).not.toContain("stdlib");
  });

  it("makes one file of all cell functions", async () => {
    const code = await bundled(
      `import { call } from "reps-to-spare/functions"; console.log(JSON.stringify(call("MDC", [2])));`,
    );
    expect(code.length).toBeLessThan(300_000);
    installed.put("bundle.mjs", code);
    expect(JSON.parse(installed.run(process.execPath, "bundle.mjs"))).toEqual([
      [expect.closeTo(2 * Math.SQRT2 * 1.959964, 5)],
    ]);
  });
});

describe("the types", () => {
  it.each([
    ["nodenext", "nodenext"],
    ["esnext", "bundler"],
  ])("are whole, strict and in need of nobody else's: module %s, resolved as %s", (module, way) => {
    installed.put(
      "typed.ts",
      `import { e1rm, equations, groupChange, type Equation, type StrengthTrend, type Absent } from "reps-to-spare";
       import { call, catalogue, type Grid } from "reps-to-spare/functions";
       const epley: Equation = equations.epley;
       export const estimate: number = e1rm(100, 7, epley);
       export const shown: Grid = call("E1RM", [[[100]], 5]);
       export const ids: string[] = catalogue.functions.map(({ id }) => id);
       export const of = (trend: StrengthTrend): number => trend.days;
       export type Missing = Absent["absent"];
       // @ts-expect-error a load is a number
       e1rm("100", 7, epley);
       export const change = groupChange;\n`,
    );
    const compilerOptions = {
      ...{ strict: true, noEmit: true, types: [], lib: ["es2022"], target: "es2022" },
      ...{ module, moduleResolution: way },
    };
    installed.put("tsconfig.json", JSON.stringify({ compilerOptions, files: ["typed.ts"] }));
    const tsc = join(ROOT, "node_modules", "typescript", "bin", "tsc");
    expect(installed.run(process.execPath, tsc)).toBe("");
  });
});
