import ts from "typescript";

/** One small change of a source. */
export interface Mutant {
  readonly line: number;
  /** What stands there, and what it becomes. */
  readonly from: string;
  readonly to: string;
  /** The whole source with the change in it. */
  readonly source: string;
}

/** Every change of a source that a test ought to notice. Types and texts are left alone. */
export function mutantsOf(source: string): Mutant[] {
  const file = ts.createSourceFile("source.ts", source, ts.ScriptTarget.Latest, true);
  const mutants: Mutant[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isInterfaceDeclaration(node) || ts.isImportDeclaration(node)) {
      return;
    }
    for (const { start, end, to } of changesOf(node)) {
      mutants.push({
        line: file.getLineAndCharacterOfPosition(start).line + 1,
        from: source.slice(start, end),
        to,
        source: source.slice(0, start) + to + source.slice(end),
      });
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return mutants;
}

interface Change {
  readonly start: number;
  readonly end: number;
  readonly to: string;
}

const change = (node: ts.Node, to: string): Change => ({
  start: node.getStart(),
  end: node.getEnd(),
  to,
});

function changesOf(node: ts.Node): Change[] {
  if (ts.isBinaryExpression(node)) {
    return (OPERATORS[node.operatorToken.getText()] ?? []).map((to) =>
      change(node.operatorToken, to),
    );
  }
  if (ts.isIfStatement(node) || ts.isWhileStatement(node)) return decided(node.expression);
  if (ts.isConditionalExpression(node)) return decided(node.condition);
  if (ts.isPrefixUnaryExpression(node)) {
    const sign = node.operator;
    const isDropped = sign === ts.SyntaxKind.MinusToken || sign === ts.SyntaxKind.ExclamationToken;
    return isDropped ? [change(node, node.operand.getText())] : [];
  }
  if (ts.isNumericLiteral(node)) return [change(node, `(${node.getText()} + 1)`)];
  if (ts.isIdentifier(node)) {
    const other = MEMBERS.get(node.text);
    const isMember = ts.isPropertyAccessExpression(node.parent) && node.parent.name === node;
    return other !== undefined && isMember ? [change(node, other)] : [];
  }
  if (ts.isExpressionStatement(node) || ts.isThrowStatement(node)) return [change(node, ";")];
  if (
    ts.isReturnStatement(node) &&
    ts.isBlock(node.parent) &&
    ts.isIfStatement(node.parent.parent)
  ) {
    return [change(node, ";")];
  }
  return [];
}

/** A condition that always, or never, holds. */
const decided = (condition: ts.Expression) => [
  change(condition, "true"),
  change(condition, "false"),
];

/** What each operator becomes. Where one is off by its edge alone, that too. */
const OPERATORS: Readonly<Record<string, readonly string[]>> = {
  "+": ["-"],
  "-": ["+"],
  "*": ["/"],
  "/": ["*"],
  "**": ["*"],
  "+=": ["-="],
  "-=": ["+="],
  "*=": ["/="],
  "/=": ["*="],
  "<": ["<=", ">="],
  "<=": ["<", ">"],
  ">": [">=", "<="],
  ">=": [">", "<"],
  "===": ["!=="],
  "!==": ["==="],
  "&&": ["||"],
  "||": ["&&"],
  "??": ["&&"],
};

const MEMBERS: ReadonlyMap<string, string> = new Map([
  ["min", "max"],
  ["max", "min"],
  ["floor", "ceil"],
  ["ceil", "floor"],
  ["some", "every"],
  ["every", "some"],
]);
