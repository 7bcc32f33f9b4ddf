import { bookWith, escaped, formulaAt, type HostileFile } from "./file";

type Names = readonly (readonly [name: string, text: string])[];

const defined = (names: Names) =>
  `<definedNames>${names
    .map(([name, text]) => `<definedName name="${escaped(name)}">${escaped(text)}</definedName>`)
    .join("")}</definedNames>`;

const letters = [..."abcdefghijklmnopqrstuvwxyz"];
/** Each is twice the next, so that the first is 2²⁵ times the last. */
const doubling: Names = letters.map((letter, at) => {
  const next = letters[at + 1];
  return [`twice_${letter}`, next === undefined ? "1" : `twice_${next}+twice_${next}`];
});
const chainOf = (length: number): Names =>
  Array.from({ length }, (_, n) => [`step_${n}`, n === length - 1 ? "100" : `step_${n + 1}`]);

/** Names that never end, or that nobody could write out. */
export function nameFiles(): HostileFile[] {
  const file = (
    name: string,
    names: Names,
    formula: string,
    more: Partial<HostileFile> = {},
  ): HostileFile => ({
    name,
    bytes: () => bookWith({ workbook: defined(names), data: formulaAt(formula) }),
    opened: true,
    ...more,
  });
  const refused = { opened: undefined, refused: /the name / };
  return [
    file("a name that means itself", [["foo", "foo+1"]], "_xldudf_SPARE_E1RM(foo,5)"),
    file(
      "two names that mean each other",
      [
        ["foo", "bar+1"],
        ["bar", "foo+1"],
      ],
      "_xldudf_SPARE_E1RM(foo,5)",
    ),
    file("a name that calls itself", [["foo", "LAMBDA(x,foo(x))"]], "_xldudf_SPARE_E1RM(foo(1),5)"),
    file("26 names that double each other", doubling, "_xldudf_SPARE_E1RM(twice_a,5)"),
    file("26 names that double each other, in a plain formula", doubling, "twice_a"),
    file("a chain of 150 names", chainOf(150), "_xldudf_SPARE_E1RM(step_0,5)"),
    file("a chain of 20,000 names", chainOf(20_000), "_xldudf_SPARE_E1RM(step_0,5)"),
    file(
      "20,000 names that nobody uses",
      Array.from({ length: 20_000 }, (_, n) => [`name_${n}`, `Log!$A$${n + 1}`]),
      "_xldudf_SPARE_E1RM(100,5)",
      { cells: { "Log!B1": 100 * (1 + 5 / 30) } },
    ),
    file(
      "one name for two things",
      [
        ["foo", "100"],
        ["FOO", "100"],
      ],
      "_xldudf_SPARE_E1RM(foo,5)",
    ),
    file(
      "names called as objects' own are",
      [
        ["__proto__", "100"],
        ["constructor", "1"],
        ["toString", "2"],
      ],
      "_xldudf_SPARE_E1RM(constructor+99,5)",
    ),
    file("a name that looks like a cell", [["A1", "5"]], "_xldudf_SPARE_E1RM(100,5)"),
    file(
      "a name of nothing",
      [
        ["", ""],
        ["foo", ""],
      ],
      "_xldudf_SPARE_E1RM(foo,5)",
    ),
    file("a name of another workbook", [["foo", "[1]Log!$A$1"]], "_xldudf_SPARE_E1RM(foo,5)"),
    file("a name that drives a terminal", [["foo_x001B_[2J", "5"]], "_xldudf_SPARE_E1RM(100,5)"),
    file(
      "a name over a whole sheet",
      [["all", "Log!$C$1:$XFD$1048576"]],
      "_xldudf_SPARE_E1RM(all,5)",
      refused,
    ),
    file(
      "a name of 100,000 characters",
      [["long", "1+".repeat(5e4) + "1"]],
      "_xldudf_SPARE_E1RM(long,5)",
      refused,
    ),
    file(
      "a name with 500 brackets",
      [["deep", "(".repeat(500) + "1" + ")".repeat(500)]],
      "_xldudf_SPARE_E1RM(deep,5)",
      refused,
    ),
    file("a name called by 1 MB", [["x".repeat(1e6), "1"]], "_xldudf_SPARE_E1RM(100,5)", refused),
    file(
      "a name used 2,000 times, 500 times over",
      [["wide", `${"1+".repeat(500)}1`]],
      `_xldudf_SPARE_E1RM(${"wide+".repeat(1000)}1,5)`,
    ),
    {
      name: "a name of a sheet that there is not",
      bytes: () =>
        bookWith({
          workbook: `<definedNames><definedName name="foo" localSheetId="99">5</definedName><definedName name="bar" localSheetId="-1">5</definedName><definedName name="baz" localSheetId="1e308">5</definedName></definedNames>`,
          data: formulaAt("_xldudf_SPARE_E1RM(foo,5)"),
        }),
      opened: true,
    },
  ];
}
