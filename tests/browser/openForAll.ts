import { afterEach, beforeAll } from "vitest";
import { patience } from "./keptTab";

/**
 * Opens the page once for all tests of a group, and again after one that failed: its next try, or the test
 * after it, would find what it left behind.
 */
export function openForAll(open: () => Promise<void>): void {
  beforeAll(open, 3 * patience);
  afterEach(({ task }) => (task.result?.state === "fail" ? open() : undefined), 3 * patience);
}
