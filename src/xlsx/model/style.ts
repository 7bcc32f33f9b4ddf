/** How a cell looks; what is left out is as in cells that nobody has touched. */
export interface StyleModel {
  readonly font?: string;
  /** In points. */
  readonly size?: number;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly underline?: boolean;
  readonly strike?: boolean;
  readonly raised?: "superscript" | "subscript";
  /** Colours are "#rrggbb". */
  readonly color?: string;
  readonly fill?: string;
  readonly borders?: Readonly<Partial<Record<BorderSide, LineModel>>>;
  readonly horizontal?: "left" | "center" | "right" | "justify" | "distributed";
  readonly vertical?: "top" | "middle" | "bottom";
  readonly wrap?: boolean;
  /** In steps of three spaces, from the side to which the text is put. */
  readonly indent?: number;
  /** Degrees by which the text is turned up, below zero down; or its letters one below the other. */
  readonly turn?: number | "stacked";
  /** A number format as in any spreadsheet: "0.0%", "ddd d mmm". */
  readonly format?: string;
}

export type BorderSide = "top" | "bottom" | "left" | "right";

export interface LineModel {
  readonly style: LineStyle;
  readonly color: string;
}

/** The lines around cells, by their names in a file. */
export const LINE_STYLES = [
  "thin",
  "hair",
  "dotted",
  "dashed",
  "dashDot",
  "dashDotDot",
  "double",
  "medium",
  "mediumDashed",
  "mediumDashDot",
  "mediumDashDotDot",
  "slantDashDot",
  "thick",
] as const;

export type LineStyle = (typeof LINE_STYLES)[number];
