import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { version } from "../../package.json";
import { VERSION } from "../../src/core/version";
import { ROOT } from "../../src/tools/paths";
import { readPackage, textAt } from "../../src/xlsx/package";
import { writeWorkbook } from "../../src/xlsx/write/workbook";

const read = (file: string) => readFileSync(join(ROOT, file), "utf8");

/** The keys that the format's schema (1.2.0) allows at the top, from memory; the first four it requires. */
const CITATION_KEYS = [
  ...[
    "cff-version",
    "message",
    "title",
    "authors",
    "abstract",
    "commit",
    "contact",
    "date-released",
    "doi",
  ],
  ...[
    "identifiers",
    "keywords",
    "license",
    "license-url",
    "preferred-citation",
    "references",
    "repository",
  ],
  ...["repository-artifact", "repository-code", "type", "url", "version"],
];

/* One number for the release, package.json's; whoever shows one shows that. */
describe("the release", () => {
  test("is a semantic version", () => {
    expect(version).toMatch(/^\d+\.\d+\.\d+$/);
    expect(VERSION).toBe(version);
  });

  test("is the add-in's, with the fourth number that Excel wants", () => {
    expect(read("manifest.xml")).toContain(`<Version>${version}.0</Version>`);
  });

  test("stands in the properties of a workbook that is written anew", () => {
    const file = readPackage(
      writeWorkbook({ sheets: [], styles: [], names: [], tables: [], from1904: false }),
    );
    expect(textAt(file, "docProps/app.xml")).toContain(
      `<Application>Microsoft Excel compatible: Reps to Spare ${version}</Application>`,
    );
  });

  test("has a part of its own in the changelog, which comes first", () => {
    expect(/^## (\S+)/m.exec(read("docs/changelog.md"))?.[1]).toBe(version);
  });

  test("is what CITATION.cff asks to cite, in the form of Citation File Format 1.2.0", () => {
    const citation = parse(read("CITATION.cff")) as Record<string, unknown>;
    expect(citation).toMatchObject({
      "cff-version": "1.2.0",
      type: "software",
      authors: [{ name: "Reps to Spare contributors" }],
      version,
      license: "MIT",
    });
    expect(Object.keys(citation).filter((key) => !CITATION_KEYS.includes(key))).toEqual([]);
    expect(citation["message"]).toContain("=SPARE.VERSION()");
    expect(citation["title"]).toMatch(/^Reps to Spare/);
    expect(citation["date-released"]).toMatch(/^\d{4}-\d\d-\d\d$/);
  });
});
