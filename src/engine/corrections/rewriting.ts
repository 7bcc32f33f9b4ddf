import { setDependencies } from "@univerjs/core";
import {
  IDefinedNamesService,
  IFormulaCurrentConfigService,
  Lexer,
  LexerTreeBuilder,
} from "@univerjs/engine-formula";
import { mapParts, piecesOf, textOf, type Piece } from "../../formula/pieces";
import { writeOutSheets } from "../../formula/sheetRanges";
import { nameVariablesApart } from "../../formula/variables";

/**
 * Reads a formula as one that says the same in a way the engine computes. The cell keeps what was
 * typed into it; this is seen by nobody.
 */
export class RewritingLexer extends Lexer {
  constructor(
    names: IDefinedNamesService,
    builder: LexerTreeBuilder,
    private readonly current: IFormulaCurrentConfigService,
  ) {
    super(names, builder, current);
  }

  override treeBuilder(formula: string, transformSuffix?: boolean) {
    return super.treeBuilder(this.rewritten(formula), transformSuffix);
  }

  private rewritten(formula: string): string {
    const written = writeOutSheets(formula, this.sheets());
    return bracketTextAfterMinus(nameVariablesApart(written));
  }

  private sheets(): string[] {
    const { sheetOrder, sheetNameMap } = this.current.getSheetsInfo();
    return sheetOrder.map((id) => sheetNameMap?.[id] ?? "");
  }
}

setDependencies(RewritingLexer, [
  IDefinedNamesService,
  LexerTreeBuilder,
  IFormulaCurrentConfigService,
]);

/** `-"4"` is -4; the engine knows no minus before a text, but one before a bracket. */
function bracketTextAfterMinus(formula: string): string {
  if (!/-\s*"/.test(formula)) return formula;
  const change = (pieces: readonly Piece[]): Piece[] =>
    pieces.map((piece, index) =>
      piece.kind === "text" && isMinus(pieces[index - 1])
        ? { kind: "group", open: "(", parts: [[piece]], closed: true }
        : piece,
    );
  return textOf(change(mapParts(piecesOf(formula), change)));
}

const isMinus = (piece: Piece | undefined) => piece?.kind === "operator" && piece.text === "-";
