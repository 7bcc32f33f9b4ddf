import ts from "typescript";
import { parsed, sourcesIn } from "../sources";

/** A message as the code writes it, with "…" for what is filled in. */
export interface Message {
  readonly file: string;
  /** What gives it: refused input (#VALUE!), no answer (#N/A), or a value that does not exist. */
  readonly kind: "refusal" | "no answer";
  readonly text: string;
}

const KINDS: Readonly<Record<string, Message["kind"]>> = {
  BadInput: "refusal",
  invalid: "refusal",
  NoAnswer: "no answer",
  notAvailable: "no answer",
  absent: "no answer",
};

/** The texts that an expression can give; none where it only passes one on. */
function textsOf(node: ts.Expression): string[] {
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isTemplateExpression(node)) {
    return [node.head.text + node.templateSpans.map(({ literal }) => `…${literal.text}`).join("")];
  }
  if (ts.isConditionalExpression(node)) {
    return [...textsOf(node.whenTrue), ...textsOf(node.whenFalse)];
  }
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken) {
    const [left = "…"] = textsOf(node.left);
    return textsOf(node.right).map((right) => left + right);
  }
  return [];
}

function messagesIn(file: string): Message[] {
  const found: Message[] = [];
  const keep = (name: string, given: ts.Expression | undefined) => {
    const kind = KINDS[name];
    if (kind === undefined || given === undefined) return;
    found.push(...textsOf(given).map((text) => ({ file, kind, text })));
  };
  const visit = (node: ts.Node): void => {
    if (ts.isNewExpression(node)) keep(node.expression.getText(), node.arguments?.[0]);
    if (ts.isCallExpression(node)) keep(node.expression.getText(), node.arguments[0]);
    if (ts.isPropertyAssignment(node)) keep(node.name.getText(), node.initializer);
    ts.forEachChild(node, visit);
  };
  visit(parsed(file));
  return found;
}

/** Every message that the core, the cells and the cell functions write themselves. */
export const allMessages: readonly Message[] = ["core", "cells", "functions"].flatMap((room) =>
  sourcesIn(`src/${room}`).flatMap(messagesIn),
);
