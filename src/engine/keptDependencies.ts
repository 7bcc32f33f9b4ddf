import type { IUnitRange } from "@univerjs/core";
import type { IFormulaDependencyTree } from "@univerjs/engine-formula";
import { FormulaDependencyGenerator } from "@univerjs/engine-formula";
import type { Area } from "../formula/address";
import { isSameArea } from "../formula/areas";
import { measuredAreas } from "../formula/measured";
import { tokensOf } from "../formula/tokens";

/** As many formulas are remembered: those of a long season, in some 60 MB. */
const MOST_KEPT = 20_000;

type Generator = FormulaDependencyGenerator;
type NodeData = Parameters<Generator["_getRangeListByNode"]>[0];
type FormulaNode = ReturnType<Generator["_getTreeNode"]>;

/** A formula taken apart, and the cells it reads on each sheet that has it. */
interface Kept {
  readonly node: FormulaNode;
  readonly ranges: Map<string, IUnitRange[]>;
}

/**
 * Before each calculation the engine asks of every formula in the workbook which cells it reads, and
 * takes each apart for it: with 10,000 formulas a third of a second whenever a cell is typed. Of a
 * formula whose text alone decides that, it is remembered from one calculation to the next.
 */
export class KeptDependencies extends FormulaDependencyGenerator {
  /** Nothing stands for a formula that has to be looked at each time. */
  private readonly kept = new Map<string, Kept | undefined>();
  private readonly keptByNode = new WeakMap<object, Kept>();
  /** Of formulas that ask where cells are: those cells. */
  private readonly measuredByNode = new WeakMap<object, Area[]>();

  protected override _generateTreeList(
    ...data: Parameters<Generator["_generateTreeList"]>
  ): ReturnType<Generator["_generateTreeList"]> {
    // Another workbook may have been opened, or a name that is called as a function mean something else.
    const current = this._currentConfigService;
    const namesChanged = Object.keys(current.getDirtyDefinedNameMap()).length > 0;
    if (namesChanged || current.isForceCalculate()) this.kept.clear();
    return super._generateTreeList(...data);
  }

  protected override _getTreeNode(tree: IFormulaDependencyTree): FormulaNode {
    const key = `${tree.unitId}${tree.formula}`;
    const known = this.kept.get(key);
    if (known) return known.node;
    const node = super._getTreeNode(tree);
    if (!this.measuredByNode.has(node)) {
      this.measuredByNode.set(node, measuredAreas(tree.formula));
    }
    if (this.kept.has(key) || this.kept.size >= MOST_KEPT) return node;
    const kept = isPlain(tree.formula) ? { node, ranges: new Map() } : undefined;
    this.kept.set(key, kept);
    if (kept) this.keptByNode.set(node, kept);
    return node;
  }

  protected override async _getRangeListByNode(data: NodeData): Promise<IUnitRange[]> {
    const ranges = data.node ? this.keptByNode.get(data.node)?.ranges : undefined;
    if (!ranges || data.refOffsetX !== 0 || data.refOffsetY !== 0) {
      return this.rangesRead(data);
    }
    const sheet = this._runtimeService.currentSubUnitId;
    const known = ranges.get(sheet);
    if (known) return known;
    const found = await this.rangesRead(data);
    ranges.set(sheet, found);
    return found;
  }

  /** The cells whose contents a formula waits for. */
  private async rangesRead(data: NodeData): Promise<IUnitRange[]> {
    const read = await super._getRangeListByNode(data);
    const sheet = this._runtimeService.currentSubUnitId;
    for (const area of data.node ? (this.measuredByNode.get(data.node) ?? []) : []) {
      const at = read.findIndex(
        ({ sheetId, range }) => sheetId === sheet && isSameArea(range, area),
      );
      if (at >= 0) read.splice(at, 1);
    }
    return read;
  }
}

/** Whether a formula reads cells by nothing but their addresses on its own sheet: by no name, table or whole column. */
function isPlain(formula: string): boolean {
  const tokens = tokensOf(formula);
  return tokens.every(({ kind, text }, at) => {
    if (kind === "operator" && text === ":") {
      return tokens[at - 1]?.kind === "cell" && tokens[at + 1]?.kind === "cell";
    }
    return PLAIN.has(kind) && text !== "@" && text !== "#";
  });
}

const PLAIN: ReadonlySet<string> = new Set(["text", "cell", "call", "number", "space", "operator"]);
