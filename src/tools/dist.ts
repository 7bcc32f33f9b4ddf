import { bundle } from "./bundle";
import { configurations } from "./configurations";
import { isFresh, markFresh } from "./freshness";

/** Builds dist/ unless the sources have not changed since it was built last. */
export async function buildIfStale(onBuild: () => void = () => undefined): Promise<void> {
  if (isFresh()) return;
  onBuild();
  await bundle(configurations());
  markFresh();
}
