import { piecesOf, type Group, type Piece } from "./pieces";
import { endsOf, writeOutSheets } from "./sheetRanges";
import { callsOurs } from "./spelling";

/** What a formula is judged by, beside its text. */
export interface Surroundings {
  /** The functions that the engine computes, in upper case. */
  readonly known: ReadonlySet<string>;
  /** The workbook's sheets, in their order. */
  readonly sheets: readonly string[];
  /** Whether the workbook has a name of this kind. */
  isName(text: string): boolean;
}

/** These depend on the program, the computer or the network, not on the workbook alone. */
const DEPENDS_ON_SURROUNDINGS = new Set(
  "CELL CUBEVALUE GETPIVOTDATA IMAGE INFO RTD WEBSERVICE".split(" "),
);

/** What these answer can be an end of a range. */
const ANSWERS_WITH_CELL = new Set(["INDEX", "INDIRECT", "OFFSET"]);

/**
 * Why the engine cannot work a formula out as Excel would, judged by its text; nothing where it can. What names stand
 * for is not looked at here.
 */
export function cannotCompute(
  formula: string,
  { known, sheets, isName }: Surroundings,
): string | undefined {
  return whyNot(piecesOf(writeOutSheets(formula, sheets)));

  function whyNot(pieces: readonly Piece[]): string | undefined {
    for (const [index, piece] of pieces.entries()) {
      const reason =
        piece.kind === "group"
          ? (whyNotGroup(piece, pieces[index - 1]) ??
            piece.parts.map(whyNot).find((each) => each !== undefined))
          : piece.kind === "call"
            ? whyNotCall(piece.text)
            : piece.kind === "sheet"
              ? whyNotSheet(piece.text)
              : undefined;
      const between = whyNotBetween(pieces[index - 1], piece, pieces[index + 1]);
      if (reason ?? between) return reason ?? between;
    }
    return undefined;
  }

  function whyNotCall(text: string): string | undefined {
    const name = text.toUpperCase();
    if (callsOurs(`${text}(`) || isName(text) || name.startsWith("_XLPM.")) return undefined;
    if (DEPENDS_ON_SURROUNDINGS.has(name)) return `${name} depends on more than the workbook`;
    return known.has(name) ? undefined : `${name} is not a function we can compute`;
  }
}

/** Why cells of a sheet cannot be read, by the sheet's name as it stands in a formula. */
export function whyNotSheet(text: string): string | undefined {
  if (text.includes("[")) return "it reads another workbook";
  return endsOf(text) ? "it reads the same cells of several sheets" : undefined;
}

/** A bracket with commas that is no call's, an array's or a LAMBDA's makes one of several ranges. */
function whyNotGroup({ call, open, parts }: Group, before?: Piece): string | undefined {
  const groups = call === undefined && open === "(" && before?.kind !== "group";
  return groups && parts.length > 1 ? "it takes several ranges as one" : undefined;
}

/** What stands between two pieces: a blank is where two ranges meet, a colon joins two cells. */
function whyNotBetween(before?: Piece, piece?: Piece, after?: Piece): string | undefined {
  if (piece?.kind === "space" && endsRange(before) && beginsRange(after)) {
    return "it reads where two ranges meet";
  }
  if (piece?.kind !== "operator" || piece.text !== ":") return undefined;
  const calls = [
    before?.kind === "group" ? before.call : undefined,
    after?.kind === "call" ? after.text : undefined,
  ];
  const call = calls.find(
    (each) => each !== undefined && !ANSWERS_WITH_CELL.has(each.toUpperCase()),
  );
  return call === undefined ? undefined : `it reads a range that ${call.toUpperCase()} ends`;
}

const RANGES = ["cell", "columns", "rows", "name", "structured"];

const endsRange = (piece?: Piece) =>
  piece !== undefined &&
  (RANGES.includes(piece.kind) || (piece.kind === "group" && piece.open === "("));

const beginsRange = (piece?: Piece) =>
  piece !== undefined && (RANGES.includes(piece.kind) || ["sheet", "call"].includes(piece.kind));
