import { tokensOf, type Token } from "./tokens";

/** A piece of a formula: a token, or a bracket with all that stands in it. */
export type Piece = Token | Group;

/** What stands between two brackets, in parts where commas stand. */
export interface Group {
  readonly kind: "group";
  /** The function that is called with it; nothing where the bracket only groups, or holds an array. */
  readonly call?: string;
  readonly open: "(" | "{";
  readonly parts: readonly (readonly Piece[])[];
  /** Whether it is closed again. */
  readonly closed: boolean;
}

/** Takes a formula apart into pieces, those in brackets in groups of their own. */
export function piecesOf(formula: string): Piece[] {
  const tokens = tokensOf(formula);
  let next = 0;
  return partsUntil(undefined).flat();

  /** The parts up to the closing bracket; without one, all that is left is one part. */
  function partsUntil(close: string | undefined): Piece[][] {
    let last: Piece[] = [];
    const parts = [last];
    for (let token = tokens[next++]; token; token = tokens[next++]) {
      if (token.text === close) return parts;
      if (token.text === "," && close !== undefined) {
        last = [];
        parts.push(last);
      } else last.push(pieceFrom(token));
    }
    return parts;
  }

  function pieceFrom(token: Token): Piece {
    if (token.text !== "(" && token.text !== "{") return token;
    const before = tokens[next - 2];
    const call = before?.kind === "call" && token.text === "(" ? before.text : undefined;
    const close = token.text === "(" ? ")" : "}";
    const parts = partsUntil(close);
    const closed = tokens[next - 1]?.text === close;
    return { kind: "group", open: token.text, parts, closed, ...(call !== undefined && { call }) };
  }
}

/** The formula that pieces are of. */
export function textOf(pieces: readonly Piece[]): string {
  return pieces
    .map((piece) => {
      if (piece.kind !== "group") return piece.text;
      const close = piece.closed ? (piece.open === "(" ? ")" : "}") : "";
      return piece.open + piece.parts.map(textOf).join(",") + close;
    })
    .join("");
}

/** The same pieces with every part of every group changed, from the inside out. */
export function mapParts(
  pieces: readonly Piece[],
  change: (part: readonly Piece[], group: Group) => readonly Piece[],
): Piece[] {
  return pieces.map((piece) =>
    piece.kind === "group"
      ? { ...piece, parts: piece.parts.map((part) => change(mapParts(part, change), piece)) }
      : piece,
  );
}

/** Pieces without the blanks around them. */
export function trimmed(pieces: readonly Piece[]): readonly Piece[] {
  const isSpace = (piece: Piece | undefined) => piece?.kind === "space";
  let [start, end] = [0, pieces.length];
  while (isSpace(pieces[start])) start++;
  while (end > start && isSpace(pieces[end - 1])) end--;
  return pieces.slice(start, end);
}
