import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface Checker {
  run(part: string, options: object): Promise<{ readonly violations: readonly Violation[] }>;
}

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

/** What the accessibility checker has against a part of the page, or all of it. */
export const violations = (page: Page, part = "html"): Promise<string[]> => check(page, part, {});

/** What it has against the colours alone: a page that passed in one light has the same names and order in every other. */
export const colorViolations = (page: Page, part = "html"): Promise<string[]> =>
  check(page, part, { runOnly: COLORS });

/** The checker's rules that read colours. */
const COLORS = ["color-contrast", "link-in-text-block"];

async function check(page: Page, part: string, options: object): Promise<string[]> {
  // Evaluated from outside the page, which its content security policy leaves alone.
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe);
  const found = await page.evaluate(
    async ([selector, asked]) => {
      const { axe: checker } = window as unknown as { axe: Checker };
      // Of what it has nothing against, it need not note every place.
      return checker.run(selector, { resultTypes: ["violations"], ...asked });
    },
    [part, options] as const,
  );
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html}\n${failureSummary}`),
  );
}
