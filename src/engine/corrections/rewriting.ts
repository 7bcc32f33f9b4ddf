import { setDependencies } from "@univerjs/core";
import {
  ErrorType,
  IDefinedNamesService,
  IFormulaCurrentConfigService,
  Lexer,
  LexerNode,
  LexerTreeBuilder,
} from "@univerjs/engine-formula";
import { withoutIdleAt } from "../../formula/idleAt";
import { letInnerLambdas } from "../../formula/innerLambdas";
import { mapParts, piecesOf, textOf, trimmed, type Piece } from "../../formula/pieces";
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
    return bracketAfterMinus(letInnerLambdas(nameVariablesApart(withoutIdleAt(written))));
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

/**
 * `-"4"` is -4, and `-x` is what `x` stands for with a minus; the engine knows neither, nor a minus before LET or
 * LAMBDA, but one before a bracket.
 */
function bracketAfterMinus(formula: string): string {
  if (!/-\s*["\p{L}_\\]/u.test(formula)) return formula;
  return textOf(bracketed(mapParts(piecesOf(formula), bracketed)));
}

function bracketed(pieces: readonly Piece[]): Piece[] {
  const changed: Piece[] = [];
  for (let at = 0; at < pieces.length;) {
    const afterMinus = isMinus(trimmed(changed).at(-1));
    const length = afterMinus ? lengthToBracket(pieces.slice(at)) : 0;
    const next = pieces.slice(at, at + Math.max(length, 1));
    if (length > 0) changed.push({ kind: "group", open: "(", parts: [next], closed: true });
    else changed.push(...next);
    at += next.length;
  }
  return changed;
}

const isMinus = (piece: Piece | undefined) => piece?.kind === "operator" && piece.text === "-";

/** How many of these pieces, from the first on, need a bracket for a minus before them. */
function lengthToBracket([first, ...others]: readonly Piece[]): number {
  if (first?.kind === "text") return 1;
  if (first?.kind === "name") return isColon(others[0]) ? 0 : 1;
  if (first?.kind !== "call" || !/^(?:LET|LAMBDA)$/i.test(first.text)) return 0;
  const end = others.findIndex(({ kind }) => kind !== "group");
  return 1 + (end < 0 ? others.length : end);
}

const isColon = (piece: Piece | undefined) => piece?.kind === "operator" && piece.text === ":";
