import { piecesOf, textOf, trimmed, type Group, type Piece } from "./pieces";

/**
 * Gives the names that a formula makes for itself in LET and LAMBDA others that nothing else has, each its own:
 * `LET(load,D2,load*2)` means its own `load` also where the workbook has a name `load`, and a name that an inner LET
 * makes anew hides the outer one inside it alone.
 */
export function nameVariablesApart(formula: string): string {
  if (!/\b(?:LET|LAMBDA)\(/i.test(formula)) return formula;
  let made = 0;
  return textOf(rename(piecesOf(formula), new Map()));

  function rename(pieces: readonly Piece[], known: ReadonlyMap<string, string>): Piece[] {
    return pieces.map((piece): Piece => {
      if (piece.kind === "name" || piece.kind === "call") {
        return { ...piece, text: known.get(piece.text.toLowerCase()) ?? piece.text };
      }
      if (piece.kind !== "group") return piece;
      const call = piece.call?.toUpperCase();
      if (call === "LET") return renameLet(piece, known);
      if (call === "LAMBDA") return renameLambda(piece, known);
      return { ...piece, parts: piece.parts.map((part) => rename(part, known)) };
    });
  }

  /** A name, its value, the next name; a value knows the names before its own. */
  function renameLet(group: Group, outside: ReadonlyMap<string, string>): Group {
    let [before, known] = [outside, outside];
    const last = group.parts.length - 1;
    const parts = group.parts.map((part, index) => {
      if (index % 2 === 1 && index < last) return rename(part, before);
      if (index === last) return rename(part, known);
      before = known;
      known = withName(known, part);
      return rename(part, known);
    });
    return { ...group, parts };
  }

  function renameLambda(group: Group, outside: ReadonlyMap<string, string>): Group {
    const known = group.parts.slice(0, -1).reduce(withName, outside);
    return { ...group, parts: group.parts.map((part) => rename(part, known)) };
  }

  function withName(known: ReadonlyMap<string, string>, part: readonly Piece[]) {
    const [name, ...more] = trimmed(part);
    if (name?.kind !== "name" || more.length > 0) return known;
    return new Map(known).set(name.text.toLowerCase(), `_own_${++made}_`);
  }
}
