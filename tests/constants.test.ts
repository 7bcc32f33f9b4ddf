import ts from "typescript";
import { describe, expect, it } from "vitest";
import { parse, parsed, sourcesIn } from "./sources";

const SPELLED_AS_CONSTANT = /^[A-Z][A-Z0-9_]*$/;

/**
 * Whether all of a value is written out: a number, a text, a pattern, what is put together of such and of other
 * constants, or a table or set of them.
 */
function isWrittenOut(value: ts.Node): boolean {
  if (ts.isAsExpression(value) || ts.isSatisfiesExpression(value)) {
    return isWrittenOut(value.expression);
  }
  if (ts.isParenthesizedExpression(value)) return isWrittenOut(value.expression);
  if (ts.isPrefixUnaryExpression(value)) return isWrittenOut(value.operand);
  if (ts.isBinaryExpression(value)) return isWrittenOut(value.left) && isWrittenOut(value.right);
  if (ts.isArrayLiteralExpression(value)) return isTable(value.elements);
  if (ts.isObjectLiteralExpression(value)) return isTable(value.properties);
  if (ts.isPropertyAssignment(value)) return isWrittenOut(value.initializer);
  if (ts.isNewExpression(value)) {
    return /^(Map|Set|RegExp)$/.test(value.expression.getText()) && isTable(value.arguments ?? []);
  }
  if (ts.isIdentifier(value)) return SPELLED_AS_CONSTANT.test(value.text);
  if (ts.isPropertyAccessExpression(value)) return SPELLED_AS_CONSTANT.test(value.name.text);
  if (ts.isSpreadElement(value)) return isWrittenOut(value.expression);
  if (ts.isTaggedTemplateExpression(value)) {
    return value.tag.getText() === "String.raw" && isWrittenOut(value.template);
  }
  if (ts.isTemplateExpression(value)) {
    return value.templateSpans.every(({ expression }) => isWrittenOut(expression));
  }
  // "SUM MAX MIN".split(" ") is a table, and so is [...].join(" ") a text.
  if (ts.isCallExpression(value) && ts.isPropertyAccessExpression(value.expression)) {
    const { expression: of, name } = value.expression;
    return /^(split|join)$/.test(name.text) && isWrittenOut(of) && isTable(value.arguments);
  }
  return (
    ts.isLiteralExpression(value) ||
    value.kind === ts.SyntaxKind.TrueKeyword ||
    value.kind === ts.SyntaxKind.FalseKeyword ||
    value.kind === ts.SyntaxKind.NullKeyword
  );
}

/** An empty one is there to be filled. */
const isTable = (parts: readonly ts.Node[]) => parts.length > 0 && parts.every(isWrittenOut);

const isMisspelled = ({ name, initializer }: ts.VariableDeclaration) => {
  // What is another's under a name of its own is spelled as that name asks.
  if (initializer === undefined || !ts.isIdentifier(name) || ts.isIdentifier(initializer)) {
    return false;
  }
  const isConstant = SPELLED_AS_CONSTANT.test(name.text);
  if (isWrittenOut(initializer)) return !isConstant;
  return isConstant && (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer));
};

/** The constants of a module that are spelled in another way than DEVELOPERS.md says. */
const misspelled = (source: ts.SourceFile) =>
  source.statements
    .filter(ts.isVariableStatement)
    .map(({ declarationList }) => declarationList)
    .filter(({ flags }) => (flags & ts.NodeFlags.Const) !== 0)
    .flatMap(({ declarations }) => declarations.filter(isMisspelled))
    .map(({ name }) => name.getText());

describe("a module's constant", () => {
  it.each([
    "const most = 20;",
    "const largest = 512 * 1024 * 1024;",
    "export const prefix = 'SPARE.';",
    "const pattern = /^a$/;",
    "const sides = { top: 't', bottom: -1 } as const;",
    "const errors: readonly string[] = ['#N/A', '#REF!'];",
    "const young = new Set(['FILTER', 'SORT']);",
    "const old = new Set('SUM MAX'.split(' '));",
    "const longest = 2 * MOST;",
    "const word = String.raw`\\w${MARK}`;",
    "const marked = new RegExp(`^${MARK}$`, 'u');",
    "const all = [...SOME, 'AVERAGE'];",
    "const sides = { left: Align.LEFT };",
    "const DOUBLE = (value: number) => 2 * value;",
  ])("that is written out is in UPPER_CASE, and a function never is: not %s", (text) => {
    expect(misspelled(parse(text))).toHaveLength(1);
  });

  it.each([
    "const MOST = 20;",
    "const double = (value: number) => 2 * value;",
    "const kept = new Map<string, number>();",
    "const listeners: (() => void)[] = [];",
    "let count = 0;",
    "const catalogue = readCatalogue();",
    "export const catalogue = CATALOGUE;",
    "const names = new Set(catalogue.map(({ name }) => name));",
    "function first() { const place = 0; return place; }",
  ])("%s is spelled right", (text) => {
    expect(misspelled(parse(text))).toEqual([]);
  });

  it("is spelled so in every file", () => {
    const files = sourcesIn("src");
    expect(files.length).toBeGreaterThan(300);
    const found = files.flatMap((file) =>
      misspelled(parsed(file)).map((name) => `${file}: ${name}`),
    );
    expect(found).toEqual([]);
  });
});
