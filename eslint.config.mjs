import tseslint from "typescript-eslint";

/** One rule of the rooms: files in `room` may import only from the rooms in `allowed`. */
const room = (name, forbidden, message) => ({
  files: [`src/${name}/**/*.ts`],
  rules: {
    "no-restricted-imports": [
      "error",
      { patterns: [{ group: forbidden.map((other) => `**/${other}/**`), message }] },
    ],
  },
});

export default tseslint.config(
  { ignores: ["dist", "node_modules", "coverage"] },
  ...tseslint.configs.strict,
  ...tseslint.configs.stylistic,
  {
    rules: {
      "@typescript-eslint/no-non-null-assertion": "off",
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_" }],
      eqeqeq: "error",
      "no-console": "error",
    },
  },
  room(
    "core",
    ["cells", "functions", "hosts", "pane", "cli", "tools"],
    "Numbers know nothing of cells or hosts.",
  ),
  room(
    "cells",
    ["core", "functions", "hosts", "pane", "cli", "tools"],
    "Cells know nothing of numbers' meaning or of hosts.",
  ),
  room("functions", ["hosts", "pane", "cli", "tools"], "Functions know nothing of hosts."),
  { files: ["src/tools/**", "src/cli/**", "tests/bench/**"], rules: { "no-console": "off" } },
);
