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
import { judgeNames, unusableIn, type JudgedNames } from "../../formula/unusableNames";
import { nameVariablesApart } from "../../formula/variables";
import { LIMITS } from "../../xlsx/limits";

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
    const unusable = unusableIn(rewritten, this.namesNow());
    if (!unusable) return super.treeBuilder(rewritten, transformSuffix);
    // The engine would not come back from writing such a name out.
    const error = unusable.why.isCircle ? ErrorType.CYCLE : ErrorType.VALUE;
    const node = super.treeBuilder(`=${error}`, transformSuffix);
    if (node instanceof LexerNode) node.setDefinedNames([...this.namesNow().unusable.keys()]);
    return node;
  }

  /** Which names can be written out, judged anew when one of them has changed. */
  private namesNow() {
    const all = this.names.getDefinedNameMap(this.current.getExecuteUnitId() ?? "") ?? {};
    const definitions = Object.values(all).map(({ name, formulaOrRefString: text }) => ({
      name,
      text,
    }));
    const key = JSON.stringify(definitions);
    if (this.judged?.key !== key) {
      this.judged = { key, names: judgeNames(definitions, LIMITS.names) };
    }
    return this.judged.names;
  }

  private judged?: { readonly key: string; readonly names: JudgedNames };

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
