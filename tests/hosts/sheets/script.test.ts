import { readFileSync, statSync } from "node:fs";
import { Linter } from "eslint";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { version } from "../../../package.json";
import { cautions } from "../../../src/tools/help";
import { built } from "../../built";
import { catalogue, wordsOf } from "../../functions/catalogue";
import { caught, elementAt } from "../../present";
import { load, SCRIPT, script } from "./load";

const ids = catalogue.functions.map(({ id }) => id);

/** The function declarations of the script, as an editor reads them. */
const declarations = ts
  .createSourceFile(SCRIPT, script, ts.ScriptTarget.ES2019, true)
  .statements.filter(ts.isFunctionDeclaration);

const declarationOf = (id: string) =>
  declarations.find(({ name }) => name?.text === `SPARE_${id}`)!;

const commentOf = (node: ts.Node) =>
  ts
    .getJSDocCommentsAndTags(node)
    .map((part) => part.getText())
    .join("\n");

describe("the script for Google Sheets", () => {
  test("adds the functions, the menu's handlers and one private name to the globals, no more", () => {
    expect([...load().added].sort()).toEqual(
      [
        ...ids.map((id) => `SPARE_${id}`),
        "onOpen",
        "repsToSpare_",
        "spareInsertExample",
        "spareShowCautions",
      ].sort(),
    );
  });

  test("keeps to the language level that Apps Script is known to have", () => {
    const messages = new Linter().verify(script, {
      languageOptions: { ecmaVersion: 2019, sourceType: "script" },
    });
    expect(messages.filter(({ fatal }) => fatal)).toEqual([]);
  });

  test("computes where the younger built-ins of V8 are missing", () => {
    const older = load(
      {},
      `for (const [owner, names] of [
        [Array.prototype, ["at", "findLast", "findLastIndex", "toSorted", "toReversed", "with"]],
        [String.prototype, ["at", "replaceAll", "matchAll"]],
        [Object, ["hasOwn", "groupBy"]],
        [Map, ["groupBy"]],
      ]) for (const name of names) delete owner[name];
      delete globalThis.structuredClone;`,
    );
    expect(older.evaluate("SPARE_PLATES(142.5)")).toBe(load().evaluate("SPARE_PLATES(142.5)"));
    expect(older.evaluate('SPARE_BLOCKPLAN(100, [["Block A",2,3,3,8,10,2,1]], 2.5)')).toEqual(
      load().evaluate('SPARE_BLOCKPLAN(100, [["Block A",2,3,3,8,10,2,1]], 2.5)'),
    );
  });

  test("is loaded by the first call only, so that opening a spreadsheet does not wait for it", () => {
    const { evaluate } = load();
    expect(evaluate("repsToSpare_.loaded")).toBeUndefined();
    evaluate("SPARE_E1RM(100, 5, 2)");
    expect(evaluate("repsToSpare_.loaded === repsToSpare_()")).toBe(true);
  });

  test("stays small, with no line that the script's editor cannot take", () => {
    expect(statSync(SCRIPT).size).toBeLessThan(800 * 1024);
    expect(Math.max(...script.split("\n").map((line) => line.length))).toBeLessThan(5000);
  });

  test("holds what computes so that it can be read: every file of the core, its names and its comments", () => {
    const read: string[] = caught(script, /^;\/\/ \.\/src\/core\/(\S+)\.ts/gm);
    for (const file of ["strength/equations", "testing/changeScore", "studies/remlVariance"]) {
      expect(read).toContain(file);
    }
    expect(script).toContain("/** Epley 1985: 1 / (1 + t/30). */");
    expect(script).toMatch(/Source: Weir 2005, J Strength Cond Res 19:231-240; Hopkins 2000/);
    expect(script).toMatch(/const ratio = change \/ noise;/);
    expect(script).not.toContain("{@phrase");
  });

  test("marks no function inside as one of Sheets' own", () => {
    expect(caught(script, /(@customfunction)/g)).toHaveLength(ids.length);
  });

  test("tells the release in its first line", () => {
    expect(script.split("\n")[1]).toContain(`Reps to Spare ${version}:`);
  });

  test("asks in its manifest for no permission", () => {
    const manifest = JSON.parse(readFileSync(built("sheets", "appsscript.json"), "utf8")) as object;
    expect(manifest).toEqual({ exceptionLogging: "NONE", runtimeVersion: "V8" });
    expect(script).toContain("@OnlyCurrentDoc");
  });

  test("reaches no service but the spreadsheet itself", () => {
    const services =
      /\b(UrlFetchApp|DriveApp|GmailApp|MailApp|PropertiesService|CacheService|ScriptApp|Session|HtmlService|Logger|console)\.|\bfetch\(/;
    expect(services.exec(script)).toBeNull();
  });

  test("carries the cautions and the notices of what comes from others", () => {
    const head = script.slice(0, script.indexOf("*/"));
    for (const caution of cautions) expect(head).toContain(caution);
    const notices = script.slice(script.lastIndexOf("/**"));
    expect(notices).toContain("Apache License, Version 2.0");
    expect(notices).toContain("The Stdlib Authors");
    expect(notices).toContain("Boost Software License");
    for (const name of BUNDLED) {
      expect(notices).toContain(name);
    }
  });
});

describe("what Sheets shows while a function is typed", () => {
  test.each(catalogue.functions.map((entry) => [entry.id, entry] as const))("%s", (id, entry) => {
    const declaration = declarationOf(id);
    const tags = ts.getJSDocTags(declaration);
    const comment = commentOf(declaration);
    expect(declaration.parameters.map((parameter) => parameter.name.getText())).toEqual(
      entry.parameters.map(({ name }) => name),
    );
    expect(tags.map(({ tagName }) => tagName.text)).toEqual([
      ...entry.parameters.map(() => "param"),
      "return",
      "customfunction",
    ]);
    expect(comment).toContain(`Example: =SPARE_${id}(`);
    const parameterTags = tags.filter(ts.isJSDocParameterTag);
    entry.parameters.forEach((parameter, position) => {
      const tag = elementAt(parameterTags, position);
      const text = ts.getTextOfJSDocComment(tag.comment)!;
      expect(tag.name.getText()).toBe(parameter.name);
      expect(tag.isBracketed).toBe(parameter.optional === true);
      expect(text.startsWith("Optional. ")).toBe(parameter.optional === true);
      for (const word of wordsOf(parameter)) expect(text).toContain(`"${word}"`);
    });
    // The advice for Excel would make one cell of a range here.
    expect(comment).not.toContain('&""');
    expect(comment).not.toContain("SPARE.");
  });

  test("keeps what a description says besides the advice for Excel", () => {
    expect(commentOf(declarationOf("E1RM"))).toContain("A blank cell means not recorded.\n");
    expect(commentOf(declarationOf("CLOSESETS"))).toContain(
      "A set with no reserve written down is not counted.\n",
    );
    expect(commentOf(declarationOf("LOGSUMMARY"))).toContain(
      "how many sets lack a load or a reserve.\n",
    );
  });
});

/** The packages of others that compute in the functions' bundle. */
const BUNDLED = ["betainc", "erfc", "erfcinv", "gammaln"].map(
  (name) => `@stdlib/math-base-special-${name}`,
);
