import { piecesOf, textOf, trimmed, type Group, type Piece } from "./pieces";

/**
 * The same formula with each LAMBDA that is called where it stands, inside another or a LET, written as a LET, which says
 * the same: `LAMBDA(a,LAMBDA(b,a-b)(2))(5)` is `LAMBDA(a,LET(b,2,a-b))(5)`. Names must differ, as `nameVariablesApart` has them:
 * what is handed to a LAMBDA does not know its names, but a later value in LET does.
 */
export function letInnerLambdas(formula: string): string {
  if (!/\bLAMBDA\(/i.test(formula)) return formula;
  return textOf(rewritten(piecesOf(formula), false));
}

function rewritten(pieces: readonly Piece[], isInside: boolean): Piece[] {
  const changed: Piece[] = [];
  for (let at = 0; at < pieces.length; at++) {
    const piece = pieces[at]!;
    const called = isInside ? calledAt(pieces, at) : undefined;
    if (called) {
      changed.push({ kind: "call", text: "LET" }, inside(called, true));
      at += 2;
    } else changed.push(piece.kind === "group" ? inside(piece, isInside) : piece);
  }
  return changed;
}

function inside(group: Group, isInside: boolean): Group {
  const within = isInside || /^(?:LET|LAMBDA)$/i.test(group.call ?? "");
  return { ...group, parts: group.parts.map((part) => rewritten(part, within)) };
}

/** What a LET takes in place of the LAMBDA that is called here: each name and its value, and what to compute. */
function calledAt(pieces: readonly Piece[], at: number): Group | undefined {
  const [, lambda, given, next] = pieces.slice(at, at + 4);
  if (lambda?.kind !== "group" || lambda.call?.toUpperCase() !== "LAMBDA") return undefined;
  if (given?.kind !== "group" || given.open !== "(") return undefined;
  // What it gives is called as well: that is another LAMBDA's text, which no LET can stand for.
  if (next?.kind === "group") return undefined;
  const names = lambda.parts.slice(0, -1);
  const values = given.parts;
  if (names.length !== values.length || values.some((part) => trimmed(part).length === 0)) {
    return undefined;
  }
  const pairs = names.flatMap((name, index) => [name, values[index]!]);
  return { ...lambda, call: "LET", parts: [...pairs, ...lambda.parts.slice(-1)] };
}
