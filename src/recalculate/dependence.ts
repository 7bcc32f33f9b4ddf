import { callsOurs } from "../formula/spelling";
import {
  columnNumber,
  lastColumn,
  lastRow,
  meet,
  parseCell,
  sheetIn,
  type Area,
} from "../formula/address";
import { tokensOf, type Token } from "../formula/tokens";
import type { Book, FormulaCell } from "./book";
import { engineFormula } from "./calculate";

/** Functions that read cells which their formula does not name. */
const readsAnywhere = new Set(["INDIRECT", "OFFSET"]);

export interface Dependence {
  /** Whether our functions have a say in a formula: it calls one, or reads, cell by cell or by a name, from one that does. */
  depends(cell: FormulaCell): boolean;
  /** The formulas that a formula reads. */
  readsOf(cell: FormulaCell): readonly FormulaCell[];
}

export function findDependence(book: Book): Dependence {
  const bySheet = new Map<string, FormulaCell[]>();
  for (const cell of book.formulas) {
    const key = cell.sheet.name.toLowerCase();
    const cells = bySheet.get(key) ?? [];
    cells.push(cell);
    bySheet.set(key, cells);
  }
  const answers = new Map<FormulaCell, boolean>();
  const names = new Map(book.names.map((name) => [name.name.toLowerCase(), name.text]));

  return { depends, readsOf: (cell) => reach(cell).reads };

  function depends(cell: FormulaCell): boolean {
    const known = answers.get(cell);
    if (known !== undefined) return known;
    const waiting: FormulaCell[] = [cell];
    const seen = new Set(waiting);
    let found = false;
    for (let next = waiting.pop(); next && !found; next = waiting.pop()) {
      const { calls, reads } = reach(next);
      found = calls || answers.get(next) === true;
      for (const read of reads) {
        if (!seen.has(read)) {
          seen.add(read);
          waiting.push(read);
        }
      }
    }
    answers.set(cell, found);
    return found;
  }

  /** Whether a formula calls one of ours by itself, and which formulas it reads. */
  function reach(cell: FormulaCell): { calls: boolean; reads: FormulaCell[] } {
    const tokens = withNames(engineFormula(cell, book));
    const calls = tokens.some(({ kind, text }) => {
      return kind === "call" && (callsOurs(`${text}(`) || readsAnywhere.has(text.toUpperCase()));
    });
    const reads = areasIn(tokens, cell.sheet.name).flatMap(({ sheet, area }) =>
      (bySheet.get(sheet.toLowerCase()) ?? []).filter((other) => meet(other.area, area)),
    );
    return { calls, reads };
  }

  /** The pieces of a formula and of every name that it reaches, each name's once. */
  function withNames(formula: string): Token[] {
    const reached = new Set<string>();
    const found: Token[] = [];
    const waiting = [formula];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      for (const token of tokensOf(next)) {
        found.push(token);
        const key = token.text.toLowerCase();
        const meaning = token.kind === "name" || token.kind === "call" ? names.get(key) : undefined;
        if (meaning === undefined || reached.has(key)) continue;
        reached.add(key);
        waiting.push(meaning);
      }
      found.push({ kind: "operator", text: "," });
    }
    return found;
  }
}

/** The areas a formula reads, each with its sheet. */
function areasIn(tokens: readonly Token[], ownSheet: string): { sheet: string; area: Area }[] {
  const areas: { sheet: string; area: Area }[] = [];
  tokens.forEach((token, index) => {
    const area = areaOf(token);
    if (!area) return;
    const before = tokens[index - 1];
    if (before?.text === ":" && areas.length > 0) {
      const last = areas[areas.length - 1];
      areas[areas.length - 1] = { sheet: last.sheet, area: around(last.area, area) };
      return;
    }
    areas.push({ sheet: before?.kind === "sheet" ? sheetIn(before.text) : ownSheet, area });
  });
  return areas;
}

function areaOf({ kind, text }: Token): Area | undefined {
  const [from, to = from] = text.replaceAll("$", "").split(":");
  switch (kind) {
    case "cell": {
      const at = parseCell(text);
      return (
        at && { startRow: at.row, startColumn: at.column, endRow: at.row, endColumn: at.column }
      );
    }
    case "columns":
      return {
        startRow: 0,
        startColumn: Math.min(columnNumber(from), columnNumber(to)),
        endRow: lastRow,
        endColumn: Math.max(columnNumber(from), columnNumber(to)),
      };
    case "rows":
      return {
        startRow: Math.min(Number(from), Number(to)) - 1,
        startColumn: 0,
        endRow: Math.max(Number(from), Number(to)) - 1,
        endColumn: lastColumn,
      };
    default:
      return undefined;
  }
}

function around(one: Area, other: Area): Area {
  return {
    startRow: Math.min(one.startRow, other.startRow),
    startColumn: Math.min(one.startColumn, other.startColumn),
    endRow: Math.max(one.endRow, other.endRow),
    endColumn: Math.max(one.endColumn, other.endColumn),
  };
}
