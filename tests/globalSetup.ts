import type { TestProject } from "vitest/node";
import { buildIfStale } from "../src/build/dist";

/** Tests in these folders read dist/. */
const READS_DIST = /browser|hosts|build|cli|pane/;

/** Builds dist/ once, before any test that reads it, where it is older than its sources. */
export default async function setup({ vitest }: TestProject): Promise<void> {
  const asked = vitest.filenamePattern ?? [];
  if (asked.length > 0 && !asked.some((path) => READS_DIST.test(path))) return;
  await buildIfStale(() =>
    process.stdout.write("Building dist/, which takes about a minute ...\n"),
  );
}
