import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT } from "../../../src/tools/paths";

describe.each(["functions.html", "pane.html"])("%s", (name) => {
  const page = readFileSync(join(ROOT, "src", "hosts", "excel", name), "utf8");

  it("runs its own scripts and the platform's, and its policy lets no other run", () => {
    const sources = [...page.matchAll(/<script [^>]*src="([^"]*)"/g)].map(([, source]) => source!);
    const others = sources.filter((source) => source.includes(":"));
    expect(others).toHaveLength(1);
    expect(others[0]).toMatch(
      /^https:\/\/appsforoffice\.microsoft\.com\/lib\/1\/hosted\/[\w-]+\.js$/,
    );
    expect(page).toContain("script-src 'self' https://appsforoffice.microsoft.com;");
    expect(page).not.toMatch(/<script(?![^>]*src=)/);
  });
});
