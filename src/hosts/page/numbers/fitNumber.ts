/** As many as a cell without room shows of these. */
const FILLER = "#";

/** Fewer decimals than these are never left of a number that has more. */
const KEPT_DECIMALS = 2;

const LONG_FRACTION = /^-?\d+\.\d{5,}$/;

/**
 * What a cell shows of a number: the whole of it, or one with a long tail of decimals rounded to the
 * room there is, or a row of "#". A number cut off would be another number.
 */
export function fitNumber(text: string, width: number, widthOf: (text: string) => number): string {
  if (widthOf(text) <= width) return text;
  if (LONG_FRACTION.test(text)) {
    const decimals = text.length - text.indexOf(".") - 1;
    for (let kept = Math.min(decimals, 12) - 1; kept >= KEPT_DECIMALS; kept--) {
      const rounded = Number(text).toFixed(kept);
      // A small number must not be shown as zero.
      if (Number(rounded) === 0 && Number(text) !== 0) break;
      if (widthOf(rounded) <= width) return rounded;
    }
  }
  const room = Math.floor(width / widthOf(FILLER));
  return FILLER.repeat(Math.max(1, Math.min(room, 12)));
}
