import ts from "typescript";

/** A source whose `while` and `for` loops count their turns by calling `count`, so that none goes on for ever. */
export function withCountedLoops(source: string, count: string): string {
  const file = ts.createSourceFile("source.ts", source, ts.ScriptTarget.Latest, true);
  const conditions: ts.Expression[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isWhileStatement(node) || ts.isDoStatement(node)) conditions.push(node.expression);
    if (ts.isForStatement(node) && node.condition) conditions.push(node.condition);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return conditions
    .sort((a, b) => b.getStart() - a.getStart())
    .reduce((text, condition) => {
      const [start, end] = [condition.getStart(), condition.getEnd()];
      return `${text.slice(0, start)}(${count}(), ${text.slice(start, end)})${text.slice(end)}`;
    }, source);
}
