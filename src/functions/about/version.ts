import { VERSION } from "../../core/version";

/**
 * The release of these functions, such as 0.2.0, for a methods section or a note beside your results: a number that changes gets a new release.
 *
 * @customfunction VERSION
 * @returns The release as text.
 * @errors None.
 * @example =SPARE.VERSION()
 * @source Semantic versions, by the rule in docs/changelog.md: a changed number is at least a minor release.
 */
export function version(): unknown[][] {
  return [[VERSION]];
}
