import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { packageOf } from "../../src/tools/bundledPackage";
import { ROOT } from "../../src/tools/paths";

const file = (...path: string[]) => join(ROOT, "node_modules", ...path);

describe("what is bundled of others", () => {
  it("comes with its licence and the notice beside it", () => {
    const { name, text, terms } = packageOf(
      file("@stdlib", "math-base-special-erfc", "lib", "main.js"),
    );
    expect(name).toBe("@stdlib/math-base-special-erfc");
    expect(text).toContain("Apache License");
    expect(text).toMatch(/Copyright \(c\) [\d-]+ The Stdlib Authors\.$/);
    expect(terms).toContain("The Stdlib Authors");
  });

  it("has the text of its read-me, or the usual one, where it brings no file", () => {
    expect(packageOf(file("ot-text-unicode", "dist", "index.js")).text).toContain(
      "Copyright 2011 ottypes library contributors",
    );
    const { text } = packageOf(file("saxes", "saxes.js"));
    expect(text).toMatch(/^Copyright \(c\) Louis-Dominique Dubeau\n\nPermission to use/);
    expect(packageOf(file("@univerjs", "protocol", "lib", "es", "index.js")).text).toContain(
      "Apache License",
    );
  });
});

describe("a package that may not be bundled", () => {
  let folder: string;
  beforeEach(() => {
    folder = join(mkdtempSync(join(tmpdir(), "notices-")), "node_modules", "strange");
    mkdirSync(folder, { recursive: true });
  });
  afterEach(() => rmSync(join(folder, "..", ".."), { recursive: true }));

  const of = (manifest: object) => () => {
    writeFileSync(join(folder, "package.json"), JSON.stringify(manifest));
    return packageOf(join(folder, "index.js"));
  };
  const strange = { name: "strange", version: "1.0.0" };

  it("has no name, no licence, no text of it or nobody to name in it", () => {
    expect(of({ type: "module" })).toThrow(/no package says/);
    expect(of(strange)).toThrow("strange 1.0.0 is bundled and names no licence");
    expect(of({ ...strange, license: "Own-1.0" })).toThrow(/without the text of its licence/);
    expect(of({ ...strange, license: "MIT" })).toThrow(/without the text of its licence/);
    expect(of({ ...strange, license: "MIT", author: "Ada <a@b.c>" })().text).toMatch(
      /^Copyright \(c\) Ada\n/,
    );
  });
});
