import type { OnProgress } from "../engine/headless";

/** Where a bar is drawn: standard error, or a test's stand-in. */
export interface Screen {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

export interface ProgressBar {
  readonly update: OnProgress;
  /** Takes the bar away, if there is one. */
  clear(): void;
}

/** Work that takes no longer than this, in milliseconds, needs no bar. */
const PATIENCE = 1000;
const WIDTH = 30;

/** A bar that shows on long work, where somebody is looking. */
export function progressBar(screen: Screen, now: () => number = Date.now): ProgressBar {
  const start = now();
  let shown = "";
  return {
    update(done, of) {
      if (!screen.isTTY || of <= 0 || now() - start < PATIENCE) return;
      const share = Math.min(1, Math.max(0, done / of));
      const full = Math.round(share * WIDTH);
      const bar = `[${"=".repeat(full)}${" ".repeat(WIDTH - full)}] ${Math.round(share * 100)}%`;
      if (bar === shown) return;
      shown = bar;
      screen.write(`\r${bar}\u001b[K`);
    },
    clear() {
      if (shown !== "") screen.write("\r\u001b[K");
      shown = "";
    },
  };
}
