import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { built } from "../built";

/*
 * What is taken from webpack's cache is not listed as what is made anew, so the licences go by what is in the bundles:
 * a second build writes the same files as the first.
 */
describe("the licences of the pane", () => {
  const licences = readFileSync(built("licences", "pane.txt"), "utf8");

  it("are those of the packages in its bundles", () => {
    expect(licences).toMatch(/^@observablehq\/plot \d/m);
  });

  it("leave out what only helped to make them", () => {
    expect(licences).not.toMatch(/\bcss-loader\b/);
  });
});
