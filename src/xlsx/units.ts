/** The widest digit of the usual font, 11 point Calibri or Arial at 10, in pixels. */
const DIGIT = 7;
/** What a cell keeps free of its text at both sides, and its line, in pixels. */
const PADDING = 5;

/** A column's width in pixels, of its width in digits as a file keeps it. */
export function widthInPixels(digits: number): number {
  return Math.trunc(((256 * digits + Math.trunc(128 / DIGIT)) / 256) * DIGIT);
}

/** A column's width in digits, of its width in pixels. */
export function widthInDigits(pixels: number): number {
  return Math.round((Math.max(0, pixels) / DIGIT) * 256) / 256;
}

/** The width a file means where it names one in whole characters, without the padding. */
export function widthOfCharacters(characters: number): number {
  return widthInPixels((characters * DIGIT + PADDING) / DIGIT);
}

export const pixelsOfPoints = (points: number): number => (points * 4) / 3;
export const pointsOfPixels = (pixels: number): number => (pixels * 3) / 4;

/** Drawings are measured in units of which an inch has 914,400 and a pixel this many. */
const EMU_OF_PIXEL = 9525;
export const pixelsOfEmu = (emu: number): number => emu / EMU_OF_PIXEL;
export const emuOfPixels = (pixels: number): number => Math.round(pixels * EMU_OF_PIXEL);
