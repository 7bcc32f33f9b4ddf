import type { Implementations } from "../formula/work";
import type { PaneData } from "../data";
import type { Port } from "../port";
import type { Findable } from "../search/findable";

/** What every view of the pane works with. */
export interface PaneContext {
  readonly data: PaneData;
  readonly port: Port;
  readonly implementations: Implementations;
  /** The address of the help page. */
  readonly helpPage: string;
  /** The folder that everything built stands in, as a whole address. */
  readonly home: string;
}

/** One of the pane's views: what its tab says, and what it shows. */
export interface View {
  readonly name: string;
  readonly build: (context: PaneContext, show: Show) => HTMLElement;
  /** What of it can be found in words, if anything. */
  readonly holds?: Findable["kind"];
  /** Brings one of those in sight, and the focus to it. */
  readonly reveal?: (panel: HTMLElement, id: string) => void;
}

/** Opens what was found in the view that holds it. */
export type Show = (found: Findable) => void;
