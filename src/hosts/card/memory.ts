import type { Card } from "../../cards/card";
import { listOf } from "../../cards/checkCard";

/** What the lifter typed, kept on this phone under a name of this card's own. */
export interface Memory {
  recall(what: string): string | undefined;
  keep(what: string, value: string): void;
  forget(): void;
}

const PREFIX = "reps-to-spare card ";

/** Two lifters' cards on one phone keep apart; a new card of the same lifter remembers. */
export function memoryOf(card: Card): Memory {
  const [, name, unit] = listOf(card);
  const own = `${PREFIX}${String(name)} ${String(unit)}`;
  let kept = read(own);
  return {
    recall: (what) => (Object.hasOwn(kept, what) ? kept[what] : undefined),
    keep(what, value) {
      kept = { ...kept, [what]: value };
      write(own, kept);
    },
    forget() {
      kept = {};
      write(own, undefined);
    },
  };
}

/** A phone that lends a page no storage still calculates; it only remembers nothing tomorrow. */
function read(name: string): Record<string, string> {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(name) ?? "{}");
    if (typeof value !== "object" || value === null) return {};
    const texts = Object.entries(value).filter((entry): entry is [string, string] => {
      return typeof entry[1] === "string" && entry[1].length < 100;
    });
    return Object.fromEntries(texts);
  } catch {
    return {};
  }
}

function write(name: string, value: Record<string, string> | undefined): void {
  try {
    if (value === undefined) localStorage.removeItem(name);
    else localStorage.setItem(name, JSON.stringify(value));
  } catch {
    // As above.
  }
}
