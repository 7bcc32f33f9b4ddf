/**
 * What a file may hold. Beyond these limits a workbook is refused in one line, since opening it would take all of a
 * computer's memory or never end. Each lies well above what people keep, and above what Excel itself allows where
 * Excel says so ("Excel specifications and limits", Microsoft).
 */
export const LIMITS = {
  /** Parts of the archive; a workbook of a hundred sheets with pictures has some hundreds. */
  parts: 10_000,
  /** All parts together, in bytes: their text is in memory with what is read from it. */
  size: 256 * 1024 * 1024,
  /** Up to this size, in bytes, nobody cares how well the file was packed. */
  harmlessSize: 32 * 1024 * 1024,
  /** Deflate packs a worksheet to about a twentieth, and nothing to less than a thousandth. */
  ratio: 250,
  /** Elements in one another; a worksheet's cell is at the sixth level. */
  elementDepth: 100,

  /** Sheets; every one is searched for what it reads. */
  sheets: 1_000,
  /** Characters of a sheet's name, of which Excel allows 31 and other programs more. */
  sheetName: 255,
  /** How often the widths of a sheet's columns may be said: each of its 16,384 columns four times over. */
  columnWidths: 65_536,
  /** Cells that merged ranges of a workbook cover together: the spreadsheet keeps each. */
  mergedCells: 1_000_000,
  /** Cells that arrays of a workbook fill together: five columns of 200,000 rows. */
  arrayCells: 1_000_000,

  /** Characters of a formula. Excel allows 8,192; a file's marks before young functions make it longer. */
  formulaLength: 16_384,
  /** Characters of all formulas together, each cell of a shared formula counted: 400,000 of 80. */
  formulaText: 32 * 1024 * 1024,
  /** Brackets and calls in one another, of which Excel allows 64. */
  formulaDepth: 100,
  /** Minus signs, or colons, one after the other: more than two are a mistake already. */
  signsInARow: 50,
  /** Cells that a formula reads, whole columns as far as they are used: one column from end to end. */
  cellsRead: 1_100_000,
  /** Rows and columns beside those that are used, which whole columns and rows reach as well: room to spill. */
  room: { rows: 600, columns: 60 },

  /** Characters of a name, as many as Excel allows. */
  nameLength: 255,
  /** Pieces of a formula with all names in it written out, and how often names may be made of names. */
  names: { pieces: 20_000, depth: 200 },
} as const;
