import { buildIfStale } from "../src/tools/dist";

/** Tests in these folders read dist/. */
const READS_DIST = /browser|hosts|build|cli|pane/;

/** Builds dist/ once, before any test that reads it, where it is older than its sources. */
export default async function setup(): Promise<void> {
  const asked = process.argv.slice(2).filter((word) => word.includes("tests"));
  if (asked.length > 0 && !asked.some((path) => READS_DIST.test(path))) return;
  await buildIfStale(() =>
    process.stdout.write("Building dist/, which takes about a minute ...\n"),
  );
}
