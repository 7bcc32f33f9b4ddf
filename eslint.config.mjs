import { readFileSync } from "node:fs";
import { dirname, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import tseslint from "typescript-eslint";

const source = fileURLToPath(new URL("src", import.meta.url));
const tests = fileURLToPath(new URL("tests", import.meta.url));

/**
 * Which rooms and packages the files of each room of `src/` may import, beside the room itself; and the packages that
 * only tests in some folders may.
 */
const { src: rooms, tests: foldersOf } = JSON.parse(
  readFileSync(new URL("src/rooms.json", import.meta.url), "utf8"),
);

const isOf = (packageName, name) => name === packageName || name.startsWith(`${packageName}/`);
const isIn = (path, folder) => !relative(folder, path).startsWith("..");

/** The room of a file, "core" or "hosts/page"; nothing for a file that is in none. */
function roomOf(path) {
  const inside = relative(source, path).replaceAll("\\", "/");
  return Object.keys(rooms).find((room) => `${inside}/`.startsWith(`${room}/`));
}

/** Holds imports to the table of the rooms. */
const roomsRule = {
  meta: {
    messages: { arrow: "{{from}} may not import {{to}} (src/rooms.json says what it may)" },
  },
  create(context) {
    const from = roomOf(context.filename);
    const inTests = isIn(context.filename, tests);
    if (from === undefined && !inTests) return {};
    const { rooms: allowed, packages } = rooms[from] ?? {};
    const isFineForTest = (name) =>
      Object.entries(foldersOf).every(
        ([packageName, folders]) =>
          !isOf(packageName, name) ||
          folders.some((folder) => isIn(context.filename, resolve(tests, folder))),
      );
    const check = ({ source: named }) => {
      if (typeof named?.value !== "string") return;
      const name = named.value;
      if (inTests) {
        if (!isFineForTest(name)) {
          context.report({
            node: named,
            messageId: "arrow",
            data: { from: "this test", to: name },
          });
        }
        return;
      }
      const to = name.startsWith(".") ? roomOf(resolve(dirname(context.filename), name)) : name;
      const fine = name.startsWith(".")
        ? to === undefined || to === from || allowed.includes(to)
        : packages.some((each) => each === "*" || isOf(each, name));
      if (!fine) context.report({ node: named, messageId: "arrow", data: { from, to } });
    };
    return {
      ImportDeclaration: check,
      ExportNamedDeclaration: check,
      ExportAllDeclaration: check,
      ImportExpression: check,
    };
  },
};

export default tseslint.config(
  { ignores: ["dist", "node_modules", "coverage"] },
  ...tseslint.configs.strict,
  ...tseslint.configs.stylistic,
  {
    // What only the types can show.
    files: ["**/*.ts"],
    languageOptions: {
      parserOptions: { project: "tsconfig.json", tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      "@typescript-eslint/await-thenable": "error",
      "@typescript-eslint/no-floating-promises": "error",
      "@typescript-eslint/no-for-in-array": "error",
      "@typescript-eslint/no-misused-promises": "error",
      "@typescript-eslint/no-unnecessary-type-assertion": "error",
      // A cell's error is a value too, which functions throw and hosts show.
      "@typescript-eslint/only-throw-error": ["error", { allow: ["CellError"] }],
      "@typescript-eslint/prefer-promise-reject-errors": "error",
      "@typescript-eslint/require-await": "error",
      "@typescript-eslint/restrict-plus-operands": "error",
      "@typescript-eslint/return-await": "error",
      "@typescript-eslint/switch-exhaustiveness-check": [
        "error",
        { considerDefaultExhaustiveForUnions: true },
      ],
    },
  },
  {
    plugins: { rooms: { rules: { arrows: roomsRule } } },
    rules: {
      "rooms/arrows": "error",
      "@typescript-eslint/no-non-null-assertion": "off",
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_" }],
      eqeqeq: "error",
      "no-console": "error",
    },
  },
  { files: ["src/tools/**", "src/cli/**", "tests/bench/**"], rules: { "no-console": "off" } },
  // A longer file holds two ideas; where they part is for whoever writes it to see.
  { files: ["src/**"], rules: { "max-lines": ["error", 250] } },
);
