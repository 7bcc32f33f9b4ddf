/** The SQL that registers the bundled functions in a data warehouse. */
export interface WarehouseParts {
  /** JavaScript that leaves the functions in a variable of the name `BUNDLE`. */
  readonly bundle: string;
  /** The licence notices of everything in it that is not ours. */
  readonly notices: readonly string[];
  readonly version: string;
}

/** The variable in which the bundle leaves what it exports. */
export const BUNDLE = "repsToSpare";

/** What stands around the JavaScript; the language's own `$` never comes twice in a row. */
const QUOTES = "$$";

/** For Snowflake, which takes the JavaScript into the statement. It is evaluated once, not for every row. */
export function snowflakeText({ bundle, notices, version }: WarehouseParts): string {
  if (bundle.includes(QUOTES)) throw new Error(`the bundle holds ${QUOTES}, which ends its quotes`);
  return `${heading(version, notices)}
-- SPARE('LOADFOR', ARRAY_CONSTRUCT(140, 5, 2, 2.5)) is [[112.5]].
CREATE OR REPLACE FUNCTION SPARE(ID VARCHAR, ARGS ARRAY)
RETURNS ARRAY
LANGUAGE JAVASCRIPT
IMMUTABLE
AS ${QUOTES}
if (typeof REPS_TO_SPARE === "undefined") {
  REPS_TO_SPARE = (function () {
${bundle.trim()}
return ${BUNDLE};
  })();
}
return REPS_TO_SPARE.answer(ID, ARGS);
${QUOTES};
`;
}

/** For BigQuery, which loads the JavaScript from a file in storage. */
export function bigQueryText({ notices, version }: Omit<WarehouseParts, "bundle">): string {
  return `${heading(version, notices)}
-- Put reps-to-spare.js into storage of your own, and its address in place of gs://your-bucket/reps-to-spare.js.
-- spare('LOADFOR', '[140, 5, 2, 2.5]') is '[[112.5]]'; TO_JSON_STRING makes the arguments of columns.
CREATE TEMP FUNCTION spare(id STRING, args STRING)
RETURNS STRING
LANGUAGE js
OPTIONS (library = ["gs://your-bucket/reps-to-spare.js"])
AS r"""
return ${BUNDLE}.answerJson(id, args);
""";
`;
}

const heading = (version: string, notices: readonly string[]) =>
  [
    `Reps to Spare ${version}: functions for programming and testing strength training. MIT licence.`,
    "Made by the build. The notices of what comes from others:",
    ...notices,
  ]
    .flatMap((text) => text.split("\n"))
    .map((line) => `-- ${line}`.trimEnd())
    .join("\n");
