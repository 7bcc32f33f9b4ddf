import { AstTreeBuilder, LexerNode } from "@univerjs/engine-formula";

/**
 * Parses a copy of what the engine has read of a formula.
 *
 * The engine keeps that for the next formula of the same text, and takes it apart where it parses LET and LAMBDA: so
 * `LET(x,5,-x)` was computed, and a second `LET(y,5,-y)`, which comes to the same text, was an error.
 */
export function parseCopies(): void {
  const { parse } = AstTreeBuilder.prototype;
  AstTreeBuilder.prototype.parse = function (lexerNode) {
    return parse.call(this, copyOf(lexerNode));
  };
}

function copyOf(node: LexerNode): LexerNode {
  const copy = new LexerNode();
  copy.setToken(node.getToken());
  copy.setDefinedNames(node.getDefinedNames());
  for (const child of node.getChildren()) {
    const own = child instanceof LexerNode ? copyOf(child) : child;
    if (own instanceof LexerNode) own.setParent(copy);
    copy.addChildren(own);
  }
  return copy;
}
