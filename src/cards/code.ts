import qrcode from "qrcode-generator";

/**
 * A link as a QR code (ISO/IEC 18004), drawn in SVG: one path of dark squares, with the four light squares around
 * it that readers need. "M" survives a smudge on 15% of it.
 */
export function codeFor(link: string): string {
  const code = qrcode(0, "M");
  code.addData(link, "Byte");
  code.make();
  const count = code.getModuleCount();
  const squares: string[] = [];
  for (let row = 0; row < count; row++) {
    for (let column = 0; column < count; column++) {
      if (code.isDark(row, column)) squares.push(`M${column + 4} ${row + 4}h1v1h-1z`);
    }
  }
  const size = count + 8;
  return (
    `<svg class="code" viewBox="0 0 ${size} ${size}" role="img" aria-label="The link to this card">` +
    `<rect width="${size}" height="${size}" fill="#fff"/>` +
    `<path d="${squares.join("")}" fill="#000"/></svg>`
  );
}
