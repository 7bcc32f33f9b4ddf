import { readFileSync } from "node:fs";
import { runInContext } from "node:vm";
import { describe, expect, it } from "vitest";
import { implementations } from "../../../src/functions/implementations";
import { bareRealm } from "../../bareRealm";
import { built } from "../../built";
import { inThisRealm } from "./realm";

const read = (name: string) => readFileSync(built("warehouse", name), "utf8");

/** The function that a file of SQL registers, run among the language's own built-ins and nothing else. */
function registered(name: string, quotes: string, parameters: string, library = "") {
  const sql = read(name);
  const body = sql.slice(sql.indexOf(quotes) + quotes.length, sql.lastIndexOf(quotes));
  const context = bareRealm();
  runInContext(library, context);
  const compute = runInContext(`(function (${parameters}) {${body}})`, context) as (
    id: string,
    args: unknown,
  ) => unknown;
  // What comes out belongs to the other context, and so its lists are no lists of ours.
  return (id: string, args: unknown) => inThisRealm(compute(id, args));
}

const snowflake = registered("snowflake.sql", "$$", "ID, ARGS");
const bigQuery = registered("bigquery.sql", '"""', "id, args", read("reps-to-spare.js"));
const hosts = [
  ["snowflake.sql", snowflake],
  [
    "bigquery.sql",
    (id: string, args: unknown) =>
      JSON.parse(String(bigQuery(id, JSON.stringify(args)))) as unknown,
  ],
] as const;

describe.each(hosts)("what %s registers", (_name, spare) => {
  it("answers on single values", () => {
    expect(spare("LOADFOR", [140, 5, 2, 2.5])).toEqual([[112.5]]);
    expect(spare("PLATES", [112.5])).toEqual([["25 + 20 + 1.25"]]);
  });

  it("answers on columns, with null for a blank, as a cell does", () => {
    const columns = [
      [["week"], [1], [1], [2]],
      [["load"], [100], [105], [110]],
      [["reps"], [5], [5], [3]],
      [["reserve"], [2], [null], [1]],
    ];
    expect(spare("LOGSUMMARY", columns)).toEqual(implementations.LOGSUMMARY(...columns));
  });

  it("gives an error with its message, and throws for a name that is none", () => {
    expect(spare("E1RM", ["80kg", 5])).toEqual([
      [{ error: "#VALUE!", message: 'load is text, "80kg"; expected a load above 0' }],
    ]);
    expect(() => spare("NOSUCH", [])).toThrow(/there is no function "NOSUCH"/);
  });
});

describe("the files of SQL", () => {
  it("evaluate the bundle once, whatever the number of rows", () => {
    const sql = read("snowflake.sql");
    const context = bareRealm({ loaded: 0 });
    const body = sql
      .slice(sql.indexOf("$$") + 2, sql.lastIndexOf("$$"))
      .replace("REPS_TO_SPARE = (function () {", "$&loaded++;");
    runInContext(
      `function spare(ID, ARGS) {${body}}; spare("MDC", [2]); spare("MDC", [3])`,
      context,
    );
    expect(context.loaded).toBe(1);
  });

  it("carry the notices of others, and no sign that ends their quotes early", () => {
    for (const name of ["snowflake.sql", "bigquery.sql"]) {
      expect(read(name)).toMatch(/^-- [^]*Apache License, Version 2\.0[^]*\nCREATE /);
    }
    expect(read("snowflake.sql").split("$$")).toHaveLength(3);
  });
});
