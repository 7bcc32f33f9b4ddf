import { performance } from "node:perf_hooks";
import { findables } from "../../src/pane/search/findable";
import { createSearch } from "../../src/pane/search/search";
import { readPaneData } from "../../src/tools/paneData";
import frozen from "../../shared/pane/questions/frozen.json";
import { median } from "./median";

/** The pane's search on every frozen question, as it is asked at each key stroke. */
export function benchFind(): void {
  const search = createSearch(findables(readPaneData()));
  const questions = Object.keys(frozen);
  for (const question of questions) search(question);
  const times = questions.map((question) => {
    const start = performance.now();
    search(question);
    return performance.now() - start;
  });
  console.log("\nA question to the pane's search, ms");
  console.table([{ questions: times.length, median: median(times), slowest: Math.max(...times) }]);
}
