import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

/** What the accessibility checker has against a part of the page, or all of it. */
export async function violations(page: Page, part = "html"): Promise<string[]> {
  // Evaluated from outside the page, which its content security policy leaves alone.
  await page.evaluate(axe);
  const found = await page.evaluate(async (selector) => {
    const checker = (window as unknown as { axe: { run(part: string): Promise<unknown> } }).axe;
    return (await checker.run(selector)) as { violations: Violation[] };
  }, part);
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html}\n${failureSummary}`),
  );
}
