import type { Area } from "../../formula/address";
import { columnsOf, firstFrom, type Column, type Columns, type Stretch } from "./columns";

/** What stands in ranges, by way of nodes for parts of columns. */
export interface RangeGraph {
  /** How many nodes there are: things first, by their numbers, then parts of columns. */
  readonly size: number;
  /** The few nodes behind which are all things in an area, but for one of them. */
  within(sheet: string, area: Area, but?: Placed): number[];
  /** The two halves of a part of a column, as nodes. */
  inside(node: number): readonly number[];
}

/** A thing by its number, and where it stands. */
export interface Placed {
  readonly number: number;
  readonly area: Area;
}

/** A column's parts: the whole is node 1 of its tree, and the halves of a node are those of twice its number and the next. */
interface Tree {
  readonly column: Column<number>;
  /** The number in the graph of what would be node 0 of the tree. */
  readonly start: number;
  /** How many leaves it has, a power of two, one for each place in the column's lists. */
  readonly leaves: number;
}

/** `count` things are known by their numbers from 0, and stand in columns by these. */
export function rangeGraph(count: number, columns: Columns<number>): RangeGraph {
  const trees: Tree[] = [];
  const treeOf = new Map<readonly number[], Tree>();
  let size = count;
  for (const ofSheet of columns.values()) {
    for (const column of ofSheet.values()) {
      let leaves = 1;
      while (leaves < column.items.length) leaves *= 2;
      const tree = { column, start: size, leaves };
      trees.push(tree);
      treeOf.set(column.items, tree);
      // The leaves are the things themselves.
      size += leaves;
    }
  }

  return {
    size,
    within(sheet, area, but) {
      const nodes: number[] = [];
      for (const stretch of columnsOf(columns, sheet, area)) addStretch(stretch, but, nodes);
      return nodes;
    },
    inside(node) {
      const tree = treeAround(node);
      const own = node - tree.start;
      return [2 * own, 2 * own + 1].flatMap((child) => nodeOf(tree, child) ?? []);
    },
  };

  function addStretch(
    { rows, items, from, to }: Stretch<number>,
    but: Placed | undefined,
    nodes: number[],
  ): void {
    const tree = treeOf.get(items)!;
    let start = from;
    if (but) {
      const { number, area } = but;
      for (
        let at = firstFrom(rows, area.startRow, from);
        at < to && rows[at]! <= area.endRow;
        at++
      ) {
        if (items[at] !== number) continue;
        addPlaces(tree, start, at, nodes);
        start = at + 1;
      }
    }
    addPlaces(tree, start, to, nodes);
  }

  /** From the leaves up: what a half of a node lacks at its edges stands by itself. */
  function addPlaces(tree: Tree, from: number, to: number, nodes: number[]): void {
    let low = tree.leaves + from;
    let high = tree.leaves + to;
    const add = (own: number) => {
      const node = nodeOf(tree, own);
      if (node !== undefined) nodes.push(node);
    };
    for (; low < high; low >>= 1, high >>= 1) {
      if (low & 1) add(low++);
      if (high & 1) add(--high);
    }
  }

  function nodeOf({ column, start, leaves }: Tree, own: number): number | undefined {
    return own < leaves ? start + own : column.items[own - leaves];
  }

  function treeAround(node: number): Tree {
    let low = 0;
    let high = trees.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (trees[middle]!.start <= node) low = middle;
      else high = middle - 1;
    }
    return trees[low]!;
  }
}
