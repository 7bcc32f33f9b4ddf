import { DuckDBInstance } from "@duckdb/node-api";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { parseCsv, writeCsv } from "../../src/cli/csv";
import { KEY_ARGUMENTS } from "../../src/cli/table/formula";
import { CellError } from "../../src/cells";
import { implementations } from "../../src/functions/implementations";
import { readCatalogue } from "../../src/tools/catalogue";
import { randomStream } from "../random";
import { spare, workFolder } from "./support";

let folder: ReturnType<typeof workFolder>;
beforeEach(() => (folder = workFolder()));
afterEach(() => folder.remove());

const HEADINGS = ["lifter", "week", "date", "load", "reps", "reserve", "calls"] as const;

/** A log in the order of its days, in which lifters take turns and one is spelled in two ways. */
function randomLog(rows: number) {
  const random = randomStream();
  return Array.from({ length: rows }, (_, row): (string | number | null)[] => {
    const lifter = ["Ines", "Callum", "Mae", row % 2 === 0 ? "Jo" : "jo "][
      Math.floor(random() * 4)
    ]!;
    const reserve = random() < 0.2 ? null : Math.floor(random() * 4);
    const reps = 1 + Math.floor(random() * 8);
    const day = Math.floor((row * 60) / rows);
    return [
      lifter,
      Math.floor(day / 7),
      46_000 + day,
      80 + 2.5 * Math.floor(random() * 20),
      reps,
      reserve,
      reps + 2,
    ];
  });
}

/** The same by one call over all of it, as a sheet would have it. */
function inOneCall(id: string, log: readonly (readonly unknown[])[], args: readonly unknown[]) {
  const column = (name: string) => {
    const at = HEADINGS.indexOf(name as (typeof HEADINGS)[number]);
    return [[name], ...log.map((row) => [row[at] ?? ""])];
  };
  const given = args.map((arg) => (typeof arg === "string" ? column(arg) : arg));
  const grid = implementations[id]!(...given);
  return grid.map((row) => row.map((one) => (one instanceof CellError ? one.code : one)));
}

const put = (log: readonly (readonly (string | number | null)[])[], name = "log.csv") =>
  folder.put(name, writeCsv([HEADINGS, ...log]));

const answer = async (formula: string, input: string) => {
  const { status, out, err } = await spare("table", input, "--formula", formula, "--quiet");
  expect([status, err]).toEqual([0, ""]);
  return parseCsv(out, ",");
};

describe("a formula over a table", () => {
  it("has its keys where the functions have them", () => {
    const keyed = readCatalogue().functions.flatMap(({ id, parameters }) => {
      const at = parameters.findIndex(({ name }) => name === "by");
      return at < 0 ? [] : [[id, at] as const];
    });
    expect(KEY_ARGUMENTS).toEqual(Object.fromEntries(keyed));
  });

  it.each([
    [
      'SPARE.LOGSUMMARY([week],[load],[reps],[reserve]&"")',
      "LOGSUMMARY",
      ["week", "load", "reps", "reserve"],
    ],
    [
      'SPARE.LOGSUMMARY([Lifter], [load], [reps], [reserve]&"", , 2)',
      "LOGSUMMARY",
      ["lifter", "load", "reps", "reserve", null, 2],
    ],
    ["=SPARE.VOLUMELOAD([load],[reps],,[lifter])", "VOLUMELOAD", ["load", "reps", null, "lifter"]],
    [
      'SPARE.CLOSESETS([reps],[reserve]&"",,3,[week])',
      "CLOSESETS",
      ["reps", "reserve", null, 3, "week"],
    ],
    [
      'SPARE.SQUADTREND([lifter],[date],[load],[reps],[reserve]&"")',
      "SQUADTREND",
      ["lifter", "date", "load", "reps", "reserve"],
    ],
    [
      'SPARE.RESERVECHECK([reps],[reserve]&"",[calls],,[lifter])',
      "RESERVECHECK",
      ["reps", "reserve", "calls", null, "lifter"],
    ],
  ] as const)(
    "comes to what one call over all of it does, key by key: %s",
    async (formula, id, args) => {
      const log = randomLog(5000);
      const wanted = inOneCall(id, log, args);
      const found = await answer(formula, put(log));
      expect(found.length).toBeGreaterThan(3);
      const inOrder = (table: string[][]) =>
        // A sheet lists a lifter at the first set that counts, a table at the first row there is.
        id === "RESERVECHECK" ? [table[0], ...table.slice(1).sort()] : table;
      expect(inOrder(found)).toEqual(inOrder(parseCsv(writeCsv(wanted), ",")));
    },
  );

  it("takes several columns for its keys", async () => {
    const log = randomLog(300);
    const found = await answer(
      "SPARE.VOLUMELOAD([load],[reps],,HSTACK([lifter],[week]))",
      put(log),
    );
    expect(found[0]).toEqual(["lifter", "week", "volume load"]);
    const total = log.reduce((sum, row) => sum + Number(row[3]) * Number(row[4]), 0);
    expect(found.slice(1).reduce((sum, row) => sum + Number(row[2]), 0)).toBeCloseTo(total, 6);
  });

  it("is one call where the function has no keys, or none are named", async () => {
    const log = randomLog(50);
    const found = await answer("SPARE.E1RM([load],[reps])", put(log));
    expect(found).toEqual(parseCsv(writeCsv(inOneCall("E1RM", log, ["load", "reps"])), ","));
    expect(await answer("SPARE.VOLUMELOAD([load],[reps])", put(log))).toEqual([
      ["volumeload"],
      [expect.stringMatching(/^\d+(?:\.5)?$/)],
    ]);
  });

  it("reads and writes Parquet, with days as a sheet counts them", async () => {
    const log = randomLog(400);
    const parquet = folder.path("log.parquet");
    const connection = await (await DuckDBInstance.create()).connect();
    await connection.run(
      `COPY (SELECT * REPLACE (DATE '1899-12-30' + date::INTEGER AS date, load::DECIMAL(6,2) AS load, reps::BIGINT AS reps)
       FROM read_csv('${put(log)}')) TO '${parquet}' (FORMAT parquet)`,
    );
    const formula = 'SPARE.SQUADTREND([lifter],[date],[load],[reps],[reserve]&"")';
    const fromText = await answer(formula, folder.path("log.csv"));
    expect(await answer(formula, parquet)).toEqual(fromText);
    const output = folder.path("out.parquet");
    const { out } = await spare("table", parquet, "--formula", formula, "-o", output);
    expect(out).toMatch(/rows read {5}400\n {2}keys {10}4\n {2}rows written {2}4\n\nWritten to /);
    const read = await connection.run(`SELECT * FROM read_parquet('${output}')`);
    const rows = (await read.getRowsJS()).map((row) => row.map(String));
    expect(rows).toEqual(fromText.slice(1));
  });
});

describe("what is wrong with a table", () => {
  const refused = async (content: string, formula: string, name = "log.csv") => {
    const { status, out, err } = await spare(
      "table",
      folder.put(name, content),
      "--formula",
      formula,
    );
    expect(out).toBe("");
    expect(err.trim().split("\n")).toHaveLength(1);
    return [status, err] as const;
  };

  it("is an error in a row: it is told as the file counts it, and ends with 1", async () => {
    const [status, err] = await refused(
      "week,load,reps\n1,100,5\n2,100,5\n1,80kg,5\n2,90,5\n",
      "SPARE.LOGSUMMARY([week],[load],[reps])",
    );
    expect([status, err]).toEqual([
      1,
      expect.stringContaining('#VALUE! load in row 4 is text, "80kg"'),
    ]);
  });

  it("is a column or a formula that is not there", async () => {
    const table = "week,load,reps\n1,100,5\n";
    for (const [formula, reason] of [
      [
        "SPARE.LOGSUMMARY([weak],[load],[reps])",
        'no column "weak"; the table has week, load, reps',
      ],
      ["SPARE.NOSUCH([load])", "expected one call"],
      ["SPARE.E1RM([load],[reps])*2", "expected one call"],
      ["SPARE.E1RM([load],A2)", 'an argument is "A2"; expected a column'],
      ["SPARE.E1RM([[load]:[reps]],5)", "is not one column"],
    ] as const) {
      expect(await refused(table, formula)).toEqual([2, expect.stringContaining(reason)]);
    }
  });

  it("is a name that does not fit, or nothing in it", async () => {
    const formula = "SPARE.E1RM([load],[reps])";
    expect(await refused("load,reps\n1,2\n", formula, "log.parquet")).toEqual([
      2,
      expect.stringContaining("its name ends in .parquet"),
    ]);
    expect(await refused("PAR1....", formula)).toEqual([
      2,
      expect.stringContaining("a Parquet table"),
    ]);
    expect(await refused("", formula)).toEqual([2, expect.stringContaining("empty")]);
    expect(await refused("load,reps\n1,2\n", formula, "log.xlsx")).toEqual([
      2,
      expect.stringContaining("from a .csv, .tsv or .parquet file"),
    ]);
  });
});
