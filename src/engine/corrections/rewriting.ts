import { setDependencies } from "@univerjs/core";
import {
  ErrorType,
  IDefinedNamesService,
  IFormulaCurrentConfigService,
  Lexer,
  LexerNode,
  LexerTreeBuilder,
} from "@univerjs/engine-formula";
import { mapParts, piecesOf, textOf, type Piece } from "../../formula/pieces";
import { writeOutSheets } from "../../formula/sheetRanges";
import { unusableIn, unusableNames } from "../../formula/unusableNames";
import { nameVariablesApart } from "../../formula/variables";

/**
 * Reads a formula as one that says the same in a way the engine computes. The cell keeps what was
 * typed into it; this is seen by nobody.
 */
export class RewritingLexer extends Lexer {
  constructor(
    private readonly names: IDefinedNamesService,
    builder: LexerTreeBuilder,
    private readonly current: IFormulaCurrentConfigService,
  ) {
    super(names, builder, current);
  }

  override treeBuilder(formula: string, transformSuffix?: boolean) {
    const rewritten = this.rewritten(formula);
    const unusable = unusableIn(rewritten, this.unusable());
    if (!unusable) return super.treeBuilder(rewritten, transformSuffix);
    // The engine would not come back from writing such a name out.
    const error = unusable.why.isCircle ? ErrorType.CYCLE : ErrorType.VALUE;
    const node = super.treeBuilder(`=${error}`, transformSuffix);
    if (node instanceof LexerNode) node.setDefinedNames([...this.unusable().keys()]);
    return node;
  }

  /** The names that cannot be written out, judged anew when one of them has changed. */
  private unusable() {
    const all = this.names.getDefinedNameMap(this.current.getExecuteUnitId() ?? "") ?? {};
    const definitions = Object.values(all).map(({ name, formulaOrRefString: text }) => ({
      name,
      text,
    }));
    const key = JSON.stringify(definitions);
    if (this.judged?.key !== key) this.judged = { key, unusable: unusableNames(definitions) };
    return this.judged.unusable;
  }

  private judged?: { readonly key: string; readonly unusable: ReturnType<typeof unusableNames> };

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
